import { describe, expect, it } from 'vitest'
import { regularizedGamma } from '#domain/numbers/distributions/incompleteGamma.ts'

describe('regularized incomplete gamma function', () => {
  // scipy.special.gammainc(a, x) and gammaincc(a, x). Relative tolerance 1e-12.
  it.each([
    [0.5, 0.3, 'lower', 0.5614219739190003],
    [4.5, 20, 'upper', 7.598525229464264e-6],
    [1250, 1200, 'lower', 0.07721422702281684],
    [1250, 1400, 'upper', 2.1269061138481734e-5],
    [0.01, 1e-8, 'lower', 0.836510254685233],
    [3, 50, 'upper', 2.509303552201055e-19],
  ] as const)('a = %d, x = %d, %s tail agrees with scipy', (a, x, tail, expected) => {
    expect(Math.abs(regularizedGamma(a, x)[tail] / expected - 1)).toBeLessThan(1e-12)
  })

  it('is the exponential distribution for a = 1, however small x is', () => {
    // By hand: P(1, x) = 1 - exp(-x).
    expect(regularizedGamma(1, 1e-20).lower / 1e-20).toBeCloseTo(1, 14)
    expect(regularizedGamma(1, 2).upper).toBeCloseTo(Math.exp(-2), 15)
  })

  // scipy.special.gammaincc gives 0 for each.
  it.each([
    [0.5, 49146330204829390],
    [50, 21952859316930500],
    [500, 19565506460932572],
  ])(
    'leaves nothing of the upper tail far out, where adding one to a number does not change it: a = %d, x = %d',
    (a, x) => {
      expect(regularizedGamma(a, x)).toEqual({ lower: 1, upper: 0 })
    },
  )

  it('is 0 and 1 at the ends and refuses parameters outside its domain', () => {
    expect(regularizedGamma(2, 0)).toEqual({ lower: 0, upper: 1 })
    expect(regularizedGamma(2, Number.POSITIVE_INFINITY)).toEqual({ lower: 1, upper: 0 })
    expect(() => regularizedGamma(0, 1)).toThrow(RangeError)
    expect(() => regularizedGamma(1, -1)).toThrow(RangeError)
  })
})
