import { describe, expect, it } from 'vitest'
import { cholesky } from '#domain/numbers/matrices/cholesky.ts'

describe('a positive definite matrix, reduced', () => {
  // Hilbert matrix of order 3: determinant 1/2160, inverse of whole numbers (Choi, American Mathematical Monthly 90 (1983) 301, from memory).
  const hilbert = [0, 1, 2].map((i) => [0, 1, 2].map((j) => 1 / (i + j + 1)))

  it('has the determinant of the Hilbert matrix', () => {
    expect(cholesky(hilbert).logDeterminant).toBeCloseTo(-Math.log(2160), 12)
  })

  it('solves for the columns of its inverse', () => {
    const inverse = [
      [9, -36, 30],
      [-36, 192, -180],
      [30, -180, 180],
    ]
    const { solve } = cholesky(hilbert)
    inverse.forEach((column, i) => {
      const unit = [0, 0, 0]
      unit[i] = 1
      solve(unit).forEach((value, j) => {
        expect(value).toBeCloseTo(column[j]!, 10)
      })
    })
  })

  it('refuses a matrix whose columns depend on each other', () => {
    expect(() =>
      cholesky([
        [1, 2],
        [2, 4],
      ]),
    ).toThrow(RangeError)
  })
})
