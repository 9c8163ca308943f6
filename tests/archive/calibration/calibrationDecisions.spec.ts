import { expect, test } from 'vitest'
import {
  addCalibrationDecision,
  calibrationDecided,
  calibrationDecisions,
} from '#archive/calibration/calibrationDecisions.ts'
import { addCalibration } from '#archive/calibration/calibrations.ts'
import { madeCalibration, storeCalibrations } from '../storedCalibration.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

test('keeps every decision in order, that for none too', () => {
  const database = archiveInMemory()
  storeCalibrations(database)
  addCalibrationDecision(database, { recordedAt: morning, by: 'bench', reason: 'cell fell', calibrationId: null })
  expect(calibrationDecisions(database).rows.map(({ calibrationId, reason }) => [calibrationId, reason])).toEqual([
    [1, 'made today'],
    [null, 'cell fell'],
  ])
})

test('puts no calibration in force that is not there', () => {
  const database = archiveInMemory()
  const decision = { recordedAt: morning, by: 'bench', reason: '', calibrationId: 3 }
  expect(() => addCalibrationDecision(database, decision)).toThrow(/There is no calibration 3/)
  expect(calibrationDecisions(database)).toEqual({ rows: [] })
})

test('in force is what the newest decision says, not the newest or highest calibration, and none before any decision', () => {
  const database = archiveInMemory()
  expect(calibrationDecided(database)).toBeNull()
  for (const name of ['May', 'June']) addCalibration(database, madeCalibration({ name }), null)
  for (const calibrationId of [2, 1, null, 1]) {
    addCalibrationDecision(database, { recordedAt: morning, by: 'bench', reason: '', calibrationId })
    expect(calibrationDecided(database)).toBe(calibrationId)
  }
})
