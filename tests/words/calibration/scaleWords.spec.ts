import { expect, it } from 'vitest'
import { isUncalibrated, scaleWords } from '#words/calibration/scaleWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const [SI, US] = [quantitiesIn('SI').forcePerCount, quantitiesIn('US').forcePerCount]

it('says what a force rests on', () => {
  expect(scaleWords({ kind: 'none' }, SI)).toBe('no scale: readings are counts')
  expect(scaleWords({ kind: 'uncalibrated-scale', nPerCount: 0.012345678 }, SI)).toBe(
    'uncalibrated: typed scale, 0.0123457\u00a0N per count',
  )
  // NIST SP 811: 1 lbf = 4.448 222 N.
  expect(scaleWords({ kind: 'uncalibrated-scale', nPerCount: 0.04448222 }, US)).toContain('0.01\u00a0lbf per count')
  expect(scaleWords({ kind: 'device-unit', unit: 'kN' }, SI)).toBe('uncalibrated: the amplifier sends kN')
  const calibration = { kind: 'calibration' as const, calibrationId: 4, coefficients: [0, 1] }
  expect(scaleWords(calibration, SI)).toBe('calibration 4')
  expect(scaleWords(calibration, SI, 'May')).toBe('calibration “May”')
})

it('calls all but a calibration uncalibrated', () => {
  expect((['none', 'uncalibrated-scale', 'device-unit', 'calibration'] as const).map(isUncalibrated)).toEqual([
    true,
    true,
    true,
    false,
  ])
})
