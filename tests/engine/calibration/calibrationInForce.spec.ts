import { expect, test } from 'vitest'
import { calibratedScale, calibrationHolds, isOverdue } from '#engine/calibration/calibrationInForce.ts'
import { madeCalibration } from '../../archive/storedCalibration.ts'

test('holds for readings of its own unit from its own kind of device only', () => {
  const calibration = madeCalibration({ device: 'serial', readingUnit: 'counts' })
  expect(calibrationHolds(calibration, 'serial', 'counts')).toBe(true)
  expect(calibrationHolds(calibration, 'virtual', 'counts')).toBe(false)
  expect(calibrationHolds(calibration, 'serial', 'kN')).toBe(false)
})

test('gives the scale that names it', () => {
  const calibration = { calibrationId: 3, ...madeCalibration() }
  const { coefficients } = calibration.assessment.result
  expect(calibratedScale(calibration)).toEqual({ kind: 'calibration', calibrationId: 3, coefficients })
})

test('is overdue from the day after the due date on, and never without one', () => {
  expect(isOverdue('2032-05-02', '2032-05-02T23:59:59.000Z')).toBe(false)
  expect(isOverdue('2032-05-02', '2032-05-03T00:00:00.000Z')).toBe(true)
  expect(isOverdue(null, '2099-01-01T00:00:00.000Z')).toBe(false)
})
