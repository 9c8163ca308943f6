/** A symmetric positive definite matrix A = L Lᵀ, reduced once for several uses. */
export type Cholesky = {
  /** ln |A|. */
  readonly logDeterminant: number
  /** x of A x = b. */
  solve(b: ArrayLike<number>): Float64Array
}

/**
 * Reduces a symmetric positive definite matrix, given by its rows. Throws RangeError where it is not positive definite.
 * Source: Golub and Van Loan, Matrix Computations, algorithm 4.2.1 (from memory). Checked: tests/domain/numbers/matrices/cholesky.spec.ts.
 */
export function cholesky(rows: readonly ArrayLike<number>[]): Cholesky {
  const size = rows.length
  const l = rows.map(() => new Float64Array(size))
  let logDeterminant = 0
  for (let j = 0; j < size; j++) {
    const lj = l[j]!
    let pivot = rows[j]![j]!
    for (let k = 0; k < j; k++) pivot -= lj[k]! * lj[k]!
    if (!(pivot > 1e-13 * Math.abs(rows[j]![j]!))) throw new RangeError('cholesky requires a positive definite matrix')
    const root = Math.sqrt(pivot)
    lj[j] = root
    logDeterminant += 2 * Math.log(root)
    for (let i = j + 1; i < size; i++) {
      const li = l[i]!
      let sum = rows[i]![j]!
      for (let k = 0; k < j; k++) sum -= li[k]! * lj[k]!
      li[j] = sum / root
    }
  }
  return {
    logDeterminant,
    solve(b) {
      const x = Float64Array.from(b)
      for (let i = 0; i < size; i++) {
        let sum = x[i]!
        for (let k = 0; k < i; k++) sum -= l[i]![k]! * x[k]!
        x[i] = sum / l[i]![i]!
      }
      for (let i = size - 1; i >= 0; i--) {
        let sum = x[i]!
        for (let k = i + 1; k < size; k++) sum -= l[k]![i]! * x[k]!
        x[i] = sum / l[i]![i]!
      }
      return x
    },
  }
}
