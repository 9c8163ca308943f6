import { expect, test } from 'vitest'
import { calibratedScale, calibrationHolds } from '#domain/calibration/scale/calibratedScale.ts'
import { madeCalibration } from '../../../archive/storedCalibration.ts'

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
