import { describe, expect, it } from 'vitest'
import { minimumSamplingHz } from '#domain/practice/minimumSampling.ts'
import { samplingBound } from '#domain/signal/samplingBound.ts'

describe('minimum sampling frequency', () => {
  // ISO 6892-1 Annex A, f = (force rate) / (F q) x 100, from memory: 667 N/s to 40 kN, arithmetic by hand.
  it.each([
    [1, 1.67],
    [0.5, 3.33],
  ])('is for 667 N/s and 40 kN at %f percent: %f /s', (sharePercent, hz) => {
    expect(minimumSamplingHz(667, 40_000, sharePercent)).toBeCloseTo(hz, 2)
  })

  it('is the frequency at which the sampling bound is that share: 500 N/s every 1/80 s are 6.25 N', () => {
    // 6.25 N are 1 % of 625 N.
    expect(samplingBound(500, 1 / 80, 0)).toBe(6.25)
    expect(minimumSamplingHz(500, 625, 1)).toBeCloseTo(80, 12)
    expect(minimumSamplingHz(2000, 2500, 1)).toBeCloseTo(80, 12)
  })

  it('wants a rate, a peak and a share above 0', () => {
    for (const [rate, peak, share] of [
      [0, 1, 1],
      [1, 0, 1],
      [1, 1, 0],
      [Number.NaN, 1, 1],
      [Number.POSITIVE_INFINITY, 1, 1],
    ] as const)
      expect(() => minimumSamplingHz(rate, peak, share)).toThrow(RangeError)
  })
})
