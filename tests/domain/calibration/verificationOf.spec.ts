import { expect, test } from 'vitest'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { verificationOf, verifiedRangeFlags } from '#domain/calibration/verificationOf.ts'

const rows = [1, 2, 3].flatMap((run) =>
  [0, 100, 200, 300].map(
    (forceN, index): CalibrationRow => ({
      run,
      direction: 'up',
      forceN,
      reading: 10 * forceN + [1, -1, 0, 1][(index + run) % 4]!,
    }),
  ),
)
const assessment = calibrationOf(rows, { degree: 1, weightsShare: 1e-4, gravityShare: 5e-5 })
const calibration = { calibrationId: 4, name: 'May', assessment }

test('gives the uncertainty inside the verified range and how many times the highest known force it is', () => {
  const inside = verificationOf(calibration, 200)
  const { expandedN, expandedPercent } = assessment.budget!.steps.find(({ forceN }) => forceN === 200)!
  expect(inside).toMatchObject({ calibrationId: 4, name: 'May', verifiedRangeN: [100, 300], timesVerified: 2 / 3 })
  expect(inside.expandedUncertaintyN).toBeCloseTo(expandedN, 12)
  expect(inside.expandedUncertaintyPercent).toBeCloseTo(expandedPercent, 12)
})

test('states an uncertainty at both ends of the verified range', () => {
  expect([100, 300].map((forceN) => verificationOf(calibration, forceN).expandedUncertaintyN)).toEqual([
    expect.any(Number),
    expect.any(Number),
  ])
})

test.each([
  [750, 2.5],
  [50, 1 / 6],
  [-30, -0.1],
])('states no uncertainty at %d N, outside the range', (forceN, times) => {
  const outside = verificationOf(calibration, forceN)
  expect(outside.timesVerified).toBeCloseTo(times, 12)
  expect(outside).toMatchObject({ expandedUncertaintyN: null, expandedUncertaintyPercent: null })
})

test('says nothing of a peak that is not there, or under a calibration without a range', () => {
  expect(verificationOf(calibration, null)).toMatchObject({ timesVerified: null, expandedUncertaintyN: null })
  const none = { ...calibration, assessment: { ...assessment, result: { ...assessment.result, verifiedRangeN: null } } }
  expect(verificationOf(none, 200)).toMatchObject({ timesVerified: null, expandedUncertaintyN: null })
})

test('flags what lies outside, ends included in the range', () => {
  const flags = (forceN: number | null) => verifiedRangeFlags([100, 300], forceN)
  expect([100, 300, null].flatMap(flags)).toEqual([])
  expect(flags(300.1)).toEqual(['above-verified-range'])
  expect(flags(99.9)).toEqual(['below-verified-range'])
  expect(verifiedRangeFlags(null, 5)).toEqual(['above-verified-range'])
})
