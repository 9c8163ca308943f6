import { describe, expect, it } from 'vitest'
import { householderLeastSquares } from '#domain/numbers/matrices/householder.ts'

describe('least squares by Householder reflections', () => {
  it('solves a square system', () => {
    // By hand: x + 2 y = 5, 3 x + 4 y = 11 has x = 1, y = 2.
    const { solution } = householderLeastSquares([Float64Array.of(1, 3), Float64Array.of(2, 4)], [5, 11])
    expect(solution[0]).toBeCloseTo(1, 14)
    expect(solution[1]).toBeCloseTo(2, 14)
  })

  it('gives the inverse of R, whose product with its transpose is the inverse of the normal matrix', () => {
    // By hand: columns (1,1,1) and (1,2,3) have AᵀA = [[3,6],[6,14]], inverse [[14,-6],[-6,3]]/6; y = (1,2,2) has b = 2/3 + x/2.
    const { solution, inverseR } = householderLeastSquares(
      [Float64Array.of(1, 1, 1), Float64Array.of(1, 2, 3)],
      [1, 2, 2],
    )
    const product = inverseR.map((a) => inverseR.map((b) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)))
    expect(product[0]![0]).toBeCloseTo(14 / 6, 13)
    expect(product[0]![1]).toBeCloseTo(-1, 13)
    expect(product[1]![1]).toBeCloseTo(0.5, 13)
    expect(solution[0]).toBeCloseTo(2 / 3, 14)
    expect(solution[1]).toBeCloseTo(0.5, 14)
  })

  it('keeps digits where normal equations lose all of them', () => {
    // Läuchli's matrix: columns (1, e, 0), (1, 0, e) with e = 1e-9; e² vanishes beside 1 in AᵀA. Right side A (1, 2)ᵀ.
    const e = 1e-9
    const { solution } = householderLeastSquares([Float64Array.of(1, e, 0), Float64Array.of(1, 0, e)], [3, e, 2 * e])
    expect(solution[0]).toBeCloseTo(1, 6)
    expect(solution[1]).toBeCloseTo(2, 6)
  })

  it('refuses dependent columns, too few rows and what is not finite', () => {
    expect(() => householderLeastSquares([Float64Array.of(1, 2, 3), Float64Array.of(2, 4, 6)], [1, 2, 3])).toThrow(
      RangeError,
    )
    expect(() => householderLeastSquares([Float64Array.of(1), Float64Array.of(2)], [1])).toThrow(RangeError)
    expect(() => householderLeastSquares([Float64Array.of(1, Number.NaN)], [1, 2])).toThrow(RangeError)
  })
})
