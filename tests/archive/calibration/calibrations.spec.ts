import { expect, test } from 'vitest'
import { beginRoutine } from '#archive/calibration/calibrationRoutines.ts'
import { addCalibration, calibration, calibrations } from '#archive/calibration/calibrations.ts'
import { shopPlan } from '#tests/fakes/routineRun.ts'
import { madeCalibration, rows, storeCalibrations } from '../storedCalibration.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

test('gives a calibration back with every reading, row and figure', () => {
  const database = archiveInMemory()
  const stored = storeCalibrations(database)
  expect(calibration(database, 1)).toEqual({ calibrationId: 1, ...madeCalibration() })
  expect(stored.rows).toEqual(rows)
})

test('lists the newest first; a newer one supersedes and leaves the older as it was', () => {
  const database = archiveInMemory()
  const first = storeCalibrations(database)
  addCalibration(database, madeCalibration({ name: 'June', supersedes: 1, readings: [] }), null)
  expect(calibrations(database).rows.map(({ name, supersedes }) => [name, supersedes])).toEqual([
    ['June', 1],
    ['May', null],
  ])
  expect(calibration(database, 1)).toEqual(first)
})

test('refuses to supersede or to read a calibration that is not there', () => {
  const database = archiveInMemory()
  expect(() => calibration(database, 1)).toThrow(/There is no calibration 1/)
  expect(() => addCalibration(database, madeCalibration({ supersedes: 9 }), null)).toThrow(/There is no calibration 9/)
  expect(calibrations(database)).toEqual({ rows: [] })
})

test('makes no calibration of a routine that was stopped early', () => {
  const database = archiveInMemory()
  storeCalibrations(database)
  expect(() => addCalibration(database, madeCalibration(), 1)).toThrow(/is over already/)
})

test('makes one calibration of a routine, and no second', () => {
  const database = archiveInMemory()
  const routineId = beginRoutine(database, { begunAt: morning, by: 'bench', source: 'test', plan: shopPlan() })
  addCalibration(database, madeCalibration({ readings: [] }), routineId)
  expect(() => addCalibration(database, madeCalibration({ readings: [] }), routineId)).toThrow(/is over already/)
})
