import { describe, expect, it } from 'vitest'
import { studentizedRangeQuantile, studentizedRangeUpperTail } from '#domain/numbers/distributions/studentizedRange.ts'
import { tQuantile } from '#domain/numbers/distributions/studentT.ts'

const relativeError = (value: number, expected: number) => Math.abs(value / expected - 1)

describe('the studentized range', () => {
  // scipy 1.17.1: stats.studentized_range.sf(q, k, df), which integrates to about 11 digits (9 in the last).
  it.each([
    [3.5, 3, 20, 0.05589184908174993],
    [1.2, 2, 5, 0.4348746270959876],
    [4.5, 60, 640, 0.5594137873721843],
    [6, 10, 5, 0.08939980503410694],
    [0.3, 5, 12, 0.9994794673823039],
    [9, 60, 30, 0.0005223745717632955],
    [20, 4, 16, 1.0337887e-9],
  ])('above %d of %d means with %d degrees of freedom has the tail of scipy', (q, k, df, upper) => {
    expect(relativeError(studentizedRangeUpperTail(q, k, df), upper)).toBeLessThan(q === 20 ? 1e-6 : 1e-10)
  })

  it.each([1, 2, 5, 40, 1e4])('of two means is t times the root of two, with %d degrees of freedom', (df) => {
    for (const upper of [0.2, 0.05, 0.001])
      expect(
        relativeError(studentizedRangeQuantile(upper, 2, df), Math.SQRT2 * -tQuantile(upper / 2, df)),
      ).toBeLessThan(1e-11)
  })

  // NIST/SEMATECH e-Handbook 7.4.7.1 prints 4.05; the tables of the studentized range, upper 5 % and 1 % (four decimals).
  it.each([
    [0.05, 4, 16, 4.0461],
    [0.05, 10, 30, 4.8241],
    [0.01, 5, 5, 8.4215],
    [0.05, 3, Number.POSITIVE_INFINITY, 3.3145],
  ])('has the printed quantile: %d, %d means, %d degrees of freedom', (upper, k, df, q) => {
    expect(studentizedRangeQuantile(upper, k, df)).toBeCloseTo(q, 4)
  })

  it('is certain above 0, and refuses one mean and no number', () => {
    expect(studentizedRangeUpperTail(0, 3, 5)).toBe(1)
    expect(() => studentizedRangeUpperTail(1, 1, 5)).toThrow(RangeError)
    expect(() => studentizedRangeUpperTail(Number.NaN, 3, 5)).toThrow(RangeError)
    expect(() => studentizedRangeQuantile(0, 3, 5)).toThrow(RangeError)
  })
})
