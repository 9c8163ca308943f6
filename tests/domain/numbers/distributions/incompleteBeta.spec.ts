import { describe, expect, it } from 'vitest'
import { regularizedBeta } from '#domain/numbers/distributions/incompleteBeta.ts'

describe('regularized incomplete beta function', () => {
  // scipy 1.10 and later: scipy.special.betainc(a, b, x). Relative tolerance 1e-12.
  it.each([
    [2, 3, 0.4, 0.5248],
    [0.5, 0.5, 0.01, 0.06376856085851985],
    [900, 1100, 0.45, 0.5005977489348786],
    [10.5, 0.5, 0.84, 0.058600012048710445],
    [20_000, 30_000, 0.398, 0.18068198290656978],
    [0.05, 9, 1e-6, 0.5730718606048061],
  ])('I(%d, %d) at %d agrees with scipy', (a, b, x, expected) => {
    expect(Math.abs(regularizedBeta(a, b, x, 1 - x).lower / expected - 1)).toBeLessThan(1e-12)
  })

  it('is its own mirror image: the lower tail of (a, b, x) is the upper tail of (b, a, 1 - x)', () => {
    for (const [a, b, x] of [
      [3, 7, 0.2],
      [0.5, 20, 0.01],
      [41, 5, 0.97],
    ] as const) {
      expect(regularizedBeta(a, b, x, 1 - x).lower).toBeCloseTo(regularizedBeta(b, a, 1 - x, x).upper, 14)
    }
  })

  it('is 0 and 1 at the ends', () => {
    expect(regularizedBeta(2, 3, 0, 1)).toEqual({ lower: 0, upper: 1 })
    expect(regularizedBeta(2, 3, 1, 0)).toEqual({ lower: 1, upper: 0 })
  })

  it('refuses parameters outside its domain', () => {
    expect(() => regularizedBeta(0, 1, 0.5, 0.5)).toThrow(RangeError)
    expect(() => regularizedBeta(1, 1, -0.1, 1)).toThrow(RangeError)
  })
})
