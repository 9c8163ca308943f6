import { expect, test } from 'vitest'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { overruledPeak } from '#domain/strength/overruledPeak.ts'

const reading = 266_667

test.each<[string, ForceScale, number]>([
  ['newtons a count', { kind: 'uncalibrated-scale', nPerCount: 0.01 }, 2666.67 - 5],
  // 1 lbf = 4.4482216152605 N exactly (NIST SP 811, table of exact conversion factors).
  ['the unit of the device', { kind: 'device-unit', unit: 'lbf' }, 266_667 * 4.4482216152605 - 5],
  [
    'a curve',
    { kind: 'calibration', calibrationId: 1, coefficients: [-1, 0.01, 1e-9] },
    -1 + 2666.67 + 71.111_288_889 - 5,
  ],
])('is the sample under the scale and zero in force: %s', (_name, scale, peakN) => {
  expect(overruledPeak(reading, { scale, tareOffset: 5 }, 'counts')!.peakN).toBeCloseTo(peakN, 6)
})

test('is not known without a scale', () => {
  expect(overruledPeak(reading, { scale: { kind: 'none' }, tareOffset: 5 }, 'counts')).toEqual({ peakN: null })
})

test('is the peak found after a word that names no sample, and without a result', () => {
  const result = { scale: { kind: 'uncalibrated-scale', nPerCount: 0.01 }, tareOffset: 5 } as const
  expect(overruledPeak(null, result, 'counts')).toBeNull()
  expect(overruledPeak(reading, null, 'counts')).toBeNull()
})
