import { describe, expect, it } from 'vitest'
import { verifiedRangeN } from '#domain/calibration/steps/verifiedRange.ts'

describe('verified range', () => {
  it('is from the lowest to the highest force applied, zero points aside', () => {
    expect(verifiedRangeN([0, 50, 200, 20], null)).toEqual([20, 200])
  })

  it('is a single force where only one was applied, however small', () => {
    expect(verifiedRangeN([0, 0.5], null)).toEqual([0.5, 0.5])
    expect(verifiedRangeN([0.5], 0)).toEqual([0.5, 0.5])
    expect(verifiedRangeN([50], 0.25)).toEqual([50, 50])
  })

  it('never includes forces below 200 times the resolution', () => {
    // ASTM E4-16 §10.1. By hand: 0.25 N · 200 = 50 N.
    expect(verifiedRangeN([20, 50, 200], 0.25)).toEqual([50, 200])
    expect(verifiedRangeN([20, 50, 200], 0.3)).toEqual([60, 200])
    expect(verifiedRangeN([20, 50, 200], 0.05)).toEqual([20, 200])
  })

  it('is nothing where the resolution is too coarse or nothing was applied', () => {
    expect(verifiedRangeN([20, 50, 200], 2)).toBeNull()
    expect(verifiedRangeN([0], null)).toBeNull()
    expect(() => verifiedRangeN([1], -1)).toThrow(RangeError)
  })
})
