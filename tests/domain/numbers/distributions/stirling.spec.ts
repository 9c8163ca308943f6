import { describe, expect, it } from 'vitest'
import { logGamma, logMinusExcess, stirlingError } from '#domain/numbers/distributions/stirling.ts'

describe('gamma function in logarithms', () => {
  // R 4.2.2: lgamma(.1), lgamma(7.3), lgamma(1e4), 15 digits and better.
  it.each([
    [0.1, 2.252712651734206],
    [7.3, 7.147892523022249],
    [1e4, 82099.71749644238],
  ])('ln Γ(%d) agrees with R to 1e-14', (z, expected) => {
    expect(Math.abs(logGamma(z) / expected - 1)).toBeLessThan(1e-14)
  })

  it('is the logarithm of a factorial for whole numbers', () => {
    // Γ(n) = (n − 1)!, by hand: 9! = 362,880. Absolute tolerance 1e-14.
    expect(Math.abs(logGamma(10) - Math.log(362_880))).toBeLessThan(1e-14)
    expect(Math.abs(logGamma(1))).toBeLessThan(1e-15)
  })

  it('keeps the digits of ln q - (q - 1) near q = 1', () => {
    // R: log1p(1e-4) - 1e-4 loses half its digits, so the series by hand: -x²/2 + x³/3 - x⁴/4.
    const x = 1e-4
    expect(logMinusExcess(1 + x, x) / (-(x ** 2) / 2 + x ** 3 / 3 - x ** 4 / 4 + x ** 5 / 5)).toBeCloseTo(1, 14)
    expect(logMinusExcess(4, 3)).toBeCloseTo(Math.log(4) - 3, 15)
  })

  it('refuses numbers outside its domain', () => {
    expect(() => logGamma(0)).toThrow(RangeError)
    expect(() => stirlingError(Number.NaN)).toThrow(RangeError)
    expect(() => logMinusExcess(0, -1)).toThrow(RangeError)
  })
})
