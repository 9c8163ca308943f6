import { describe, expect, test } from 'vitest'
import { median, quantileOfSorted } from '#domain/numbers/quantile.ts'

const seven = [3.2, 1.5, 9.9, 4.4, 7.1, 0.3, 5.0]

describe('quantileOfSorted', () => {
  // R 4.2.2: quantile(c(3.2, 1.5, 9.9, 4.4, 7.1, 0.3, 5.0), c(.1, .25, .5, .75), type = 7); numpy.quantile says the same.
  test.each([
    [0.1, 1.02],
    [0.25, 2.35],
    [0.5, 4.4],
    [0.75, 6.05],
    [0, 0.3],
    [1, 9.9],
  ])('of seven values at %d is that of R', (p, expected) => {
    expect(
      quantileOfSorted(
        seven.toSorted((a, b) => a - b),
        p,
      ),
    ).toBeCloseTo(expected, 12)
  })

  // The same of the first six values.
  test.each([
    [0.1, 0.9],
    [0.25, 1.925],
    [0.5, 3.8],
    [0.75, 6.425],
  ])('of six values at %d is that of R', (p, expected) => {
    expect(quantileOfSorted(Float64Array.from(seven.slice(0, 6)).sort(), p)).toBeCloseTo(expected, 12)
  })

  test('of one value is that value', () => {
    for (const p of [0, 0.3, 1]) expect(quantileOfSorted([7], p)).toBe(7)
  })

  test('refuses no values and what is no probability', () => {
    expect(() => quantileOfSorted([], 0.5)).toThrow(RangeError)
    for (const p of [-0.1, 1.1, Number.NaN]) expect(() => quantileOfSorted([1, 2], p)).toThrow(RangeError)
  })
})

describe('median', () => {
  test('takes values in any order, and leaves them so', () => {
    const values = [...seven]
    expect(median(values)).toBe(4.4)
    expect(values).toEqual(seven)
    // numpy.median([10, 9, -8, 7])
    expect(median([10, 9, -8, 7])).toBe(8)
  })
})
