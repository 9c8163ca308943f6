import { expect, test } from 'vitest'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { zeroUnderScale } from '#domain/calibration/scale/scaleChange.ts'

const typed: ForceScale = { kind: 'uncalibrated-scale', nPerCount: 0.01 }
const bent: ForceScale = { kind: 'calibration', calibrationId: 1, coefficients: [-480, 0.01, 1e-9] }

test('carries zero and threshold over by the reading at which the zero was', () => {
  // 482 N at 0.01 N per count are 48,200 counts; there the bent curve gives -480 + 482 + 2.32324, and rises 1.00964 times as fast.
  const zero = zeroUnderScale(typed, bent, 'counts', { tareOffset: 482, startThresholdN: 5 }, 48_000)
  expect(zero.tareOffset).toBeCloseTo(4.32324, 9)
  expect(zero.startThresholdN).toBeCloseTo(5 * 1.00964, 9)
})

test('finds its way back through a bent curve', () => {
  const zero = zeroUnderScale(bent, typed, 'counts', { tareOffset: 4.32324, startThresholdN: null }, 0)
  expect(zero.tareOffset).toBeCloseTo(482, 8)
  expect(zero.startThresholdN).toBeNull()
})

test('takes a zero in counts as the reading itself', () => {
  const zero = zeroUnderScale({ kind: 'none' }, typed, 'counts', { tareOffset: 300, startThresholdN: 40 }, 0)
  expect(zero.tareOffset).toBeCloseTo(3, 12)
  expect(zero.startThresholdN).toBeCloseTo(0.4, 12)
})

test('keeps the threshold above zero for a cell that is wired in reverse', () => {
  const reverse: ForceScale = { kind: 'uncalibrated-scale', nPerCount: -0.02 }
  expect(zeroUnderScale(typed, reverse, 'counts', { tareOffset: 1, startThresholdN: 5 }, 90)).toEqual({
    tareOffset: -2,
    startThresholdN: 10,
  })
})

test('says that a scale which gives one force alone never reaches another', () => {
  const level: ForceScale = { kind: 'calibration', calibrationId: 1, coefficients: [5] }
  expect(() => zeroUnderScale(level, typed, 'counts', { tareOffset: 4, startThresholdN: null }, 0)).toThrow(RangeError)
})
