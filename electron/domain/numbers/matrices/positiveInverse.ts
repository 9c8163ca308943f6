import { dot } from './dot.ts'

/**
 * Inverse of a symmetric positive definite matrix, by Cholesky; null where it is not positive definite.
 * Source: Golub and Van Loan, Matrix Computations, 4.2 (from memory). Checked: tests/domain/numbers/matrices/positiveInverse.spec.ts.
 */
export function positiveInverse(matrix: readonly (readonly number[])[]): number[][] | null {
  const n = matrix.length
  const lower = matrix.map(() => new Array<number>(n).fill(0))
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let rest = matrix[i]![j]!
      for (let k = 0; k < j; k++) rest -= lower[i]![k]! * lower[j]![k]!
      if (i > j) lower[i]![j] = rest / lower[j]![j]!
      else if (rest > 1e-14 * Math.abs(matrix[i]![i]!)) lower[i]![i] = Math.sqrt(rest)
      else return null
    }
  const inverseLower = matrix.map((_, column) => {
    const solved = new Array<number>(n).fill(0)
    for (let i = column; i < n; i++) {
      let rest = i === column ? 1 : 0
      for (let k = column; k < i; k++) rest -= lower[i]![k]! * solved[k]!
      solved[i] = rest / lower[i]![i]!
    }
    return solved
  })
  return inverseLower.map((one) => inverseLower.map((other) => dot(one, other)))
}
