import { expect, it } from 'vitest'
import { isUncalibrated, scaleWords } from '#words/calibration/scaleWords.ts'

it('says what a force rests on', () => {
  expect(scaleWords({ kind: 'none' })).toBe('no scale: readings are counts')
  expect(scaleWords({ kind: 'uncalibrated-scale', nPerCount: 0.012345678 })).toBe(
    'uncalibrated: typed scale, 0.0123457 N per count',
  )
  expect(scaleWords({ kind: 'device-unit', unit: 'kN' })).toBe('uncalibrated: the amplifier sends kN')
  const calibration = { kind: 'calibration' as const, calibrationId: 4, coefficients: [0, 1] }
  expect(scaleWords(calibration)).toBe('calibration 4')
  expect(scaleWords(calibration, 'May')).toBe('calibration “May”')
})

it('calls all but a calibration uncalibrated', () => {
  expect((['none', 'uncalibrated-scale', 'device-unit', 'calibration'] as const).map(isUncalibrated)).toEqual([
    true,
    true,
    true,
    false,
  ])
})
