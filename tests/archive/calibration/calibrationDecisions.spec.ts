import { expect, test } from 'vitest'
import { addCalibrationDecision, calibrationDecisions } from '#archive/calibration/calibrationDecisions.ts'
import { storeCalibrations } from '../storedCalibration.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

test('keeps every decision in order, that for none too', () => {
  const database = archiveInMemory()
  storeCalibrations(database)
  addCalibrationDecision(database, { recordedAt: morning, by: 'bench', reason: 'cell fell', calibrationId: null })
  expect(calibrationDecisions(database).map(({ calibrationId, reason }) => [calibrationId, reason])).toEqual([
    [1, 'made today'],
    [null, 'cell fell'],
  ])
})

test('puts no calibration in force that is not there', () => {
  const database = archiveInMemory()
  const decision = { recordedAt: morning, by: 'bench', reason: '', calibrationId: 3 }
  expect(() => addCalibrationDecision(database, decision)).toThrow(/There is no calibration 3/)
  expect(calibrationDecisions(database)).toEqual([])
})
