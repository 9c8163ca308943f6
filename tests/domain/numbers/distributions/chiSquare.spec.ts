import { describe, expect, it } from 'vitest'
import { chiSquareProbability, chiSquareQuantile, chiSquareUpperTail } from '#domain/numbers/distributions/chiSquare.ts'

const relativeError = (value: number, expected: number) => Math.abs(value / expected - 1)

describe('chi-square distribution', () => {
  it('agrees with R pchisq to 1e-11', () => {
    // R 4.2.2: pchisq(20.785873, 9); pchisq(1e-6, 2); pchisq(3.3963887, 1, lower = FALSE); pchisq(100, 3, lower = FALSE)
    expect(relativeError(chiSquareProbability(20.785873, 9), 0.9863641346810305)).toBeLessThan(1e-11)
    expect(relativeError(chiSquareProbability(1e-6, 2), 4.999998750000208e-7)).toBeLessThan(1e-11)
    expect(relativeError(chiSquareUpperTail(3.3963887, 1), 0.06533932200000016)).toBeLessThan(1e-11)
    expect(relativeError(chiSquareUpperTail(100, 3), 1.554159431389605e-21)).toBeLessThan(1e-11)
  })

  // R: qchisq(.95, 9); qchisq(.025, 9); qchisq(.975, 2500). Relative tolerance 1e-11.
  it.each([
    [0.95, 9, 16.91897760462044],
    [0.025, 9, 2.700389499980358],
    [0.975, 2500, 2640.474853252357],
  ])('quantile %d with %d degrees of freedom agrees with R qchisq', (p, df, expected) => {
    expect(relativeError(chiSquareQuantile(p, df), expected)).toBeLessThan(1e-11)
  })

  it('refuses degrees of freedom that are not positive', () => {
    expect(() => chiSquareProbability(1, 0)).toThrow(RangeError)
    expect(() => chiSquareQuantile(0.5, -1)).toThrow(RangeError)
  })
})
