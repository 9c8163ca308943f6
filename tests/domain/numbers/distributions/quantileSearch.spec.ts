import { describe, expect, it } from 'vitest'
import { positiveQuantile } from '#domain/numbers/distributions/quantileSearch.ts'

describe('quantile search', () => {
  const exponential = (x: number) => ({ lower: -Math.expm1(-x), upper: Math.exp(-x) })

  it('inverts the exponential distribution, whose quantile is -ln(1 - p), in both tails', () => {
    for (const p of [1e-12, 0.01, 0.5, 0.99])
      expect(positiveQuantile(exponential, p) / -Math.log1p(-p)).toBeCloseTo(1, 12)
    // The upper tail given apart keeps digits that 1 - p has lost.
    expect(positiveQuantile(exponential, 1, 1e-30)).toBeCloseTo(30 * Math.LN10, 10)
  })

  it('has its ends at 0 and infinity and refuses what is no probability', () => {
    expect(positiveQuantile(exponential, 0)).toBe(0)
    expect(positiveQuantile(exponential, 1)).toBe(Number.POSITIVE_INFINITY)
    expect(() => positiveQuantile(exponential, 1.1)).toThrow(RangeError)
  })
})
