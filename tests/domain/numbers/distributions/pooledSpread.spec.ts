import { expect, it } from 'vitest'
import { meanOverSpread } from '#domain/numbers/distributions/pooledSpread.ts'

// The mean of a standard deviation in units of the true one: c4 of the tables for control charts (NIST/SEMATECH e-Handbook
// 6.3.2: n = 2, 5, 10, 25), and its square, whose mean is 1.
it.each([
  [1, 0.7979],
  [4, 0.94],
  [9, 0.9727],
  [24, 0.9896],
])('the mean SD with %d degrees of freedom is c4', (df, c4) => {
  expect(meanOverSpread(df, 0, (s) => s)).toBeCloseTo(c4, 4)
  expect(meanOverSpread(df, 0, (s) => s * s)).toBeCloseTo(1, 12)
})

it.each([0.5, 1, 7, 300, 1e6])('the weights of %d degrees of freedom add up to 1', (df) => {
  expect(Math.abs(meanOverSpread(df, 0, () => 1) - 1)).toBeLessThan(1e-13)
})

it('is the value at 1 with endless degrees of freedom, and refuses none', () => {
  expect(meanOverSpread(Number.POSITIVE_INFINITY, 0, (s) => s + 1)).toBe(2)
  expect(() => meanOverSpread(0, 0, (s) => s)).toThrow(RangeError)
})
