import { expect, it } from 'vitest'
import { fUpperTail } from '#domain/numbers/distributions/fisherF.ts'
import { noncentralFUpperTail } from '#domain/numbers/distributions/noncentralF.ts'

const relativeError = (value: number, expected: number) => Math.abs(value / expected - 1)

// mpmath 1.3.0, 30 digits, the sum of Poisson weights and betainc for the first; scipy 1.17.1 stats.ncf.sf for the others.
it.each([
  [3.1, 3, 16, 8, 0.56339969296621],
  [1.2, 9, 1e5, 40, 0.99995389047037],
  [2.5, 2, 12, 0.3, 0.15649511963946],
  [4, 5, 30, 200, 1.0],
  [1.5, 59, 660, 24, 0.34519017584684],
])(
  'the tail above %d with %d and %d degrees of freedom and noncentrality %d is that of scipy',
  (f, df1, df2, lambda, upper) => {
    expect(relativeError(noncentralFUpperTail(f, df1, df2, lambda), upper)).toBeLessThan(1e-11)
  },
)

it('is that of F without a noncentrality, and 1 below 0', () => {
  expect(noncentralFUpperTail(5, 2, 6, 0)).toBe(fUpperTail(5, 2, 6))
  expect(noncentralFUpperTail(0, 2, 6, 4)).toBe(1)
})

it('refuses what is no degree of freedom or noncentrality', () => {
  expect(() => noncentralFUpperTail(1, 0, 3, 1)).toThrow(RangeError)
  expect(() => noncentralFUpperTail(1, 2, 3, -1)).toThrow(RangeError)
})
