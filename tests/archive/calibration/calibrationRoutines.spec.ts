import { expect, test } from 'vitest'
import {
  addRoutineReading,
  beginRoutine,
  breakOffRoutine,
  brokenOffRoutines,
} from '#archive/calibration/calibrationRoutines.ts'
import { shopPlan } from '#tests/fakes/routineRun.ts'
import { storeCalibrations } from '../storedCalibration.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

const reading = {
  run: 1,
  direction: 'up' as const,
  weights: [],
  forceN: 0,
  mean: 100.25,
  sd: 4,
  count: 160,
  takenAt: morning,
}
const begun = { begunAt: morning, by: 'bench', source: 'virtual amplifier: idle', plan: shopPlan() }

test('keeps the readings of a routine that was broken off, with the reason', () => {
  const database = archiveInMemory()
  storeCalibrations(database)
  expect(brokenOffRoutines(database).rows).toMatchObject([
    {
      routineId: 1,
      reason: 'the hanger touched the frame',
      endedAt: morning,
      plan: shopPlan(),
      readings: [{ mean: 101, standing: 'broken-off' }],
    },
  ])
})

test('keeps the readings of a routine that ended with the program', () => {
  const database = archiveInMemory()
  const routineId = beginRoutine(database, begun)
  addRoutineReading(database, routineId, 0, reading)
  expect(brokenOffRoutines(database).rows).toMatchObject([
    { routineId, endedAt: null, reason: '', readings: [{ mean: 100.25 }] },
  ])
})

test('refuses a reading twice, one of no routine, and a second end', () => {
  const database = archiveInMemory()
  const routineId = beginRoutine(database, begun)
  addRoutineReading(database, routineId, 0, reading)
  expect(() => addRoutineReading(database, routineId, 0, reading)).toThrow(/append-only/)
  expect(() => addRoutineReading(database, 9, 0, reading)).toThrow(/There is no calibration routine 9/)
  breakOffRoutine(database, routineId, morning, 'rain')
  expect(() => breakOffRoutine(database, routineId, morning, 'rain')).toThrow(/is over already/)
})
