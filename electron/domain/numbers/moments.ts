/** Number, mean and sum of squares about the mean, in the unit of the values and its square. */
export type Moments = { readonly n: number; readonly mean: number; readonly squares: number }

/**
 * Moments of values, with as many digits as the values have.
 *
 *   d = x − x₁     x̄ = x₁ + Σd/n     SS = Σ(d − d̄)² − (Σ(d − d̄))²/n
 *
 * Two passes about the first value, corrected for the rounding of the mean, so that a common large part costs no digits.
 * Throws RangeError for no values.
 * Source: Chan, Golub and LeVeque, The American Statistician 37 (1983) 242. Checked: tests/domain/numbers/moments.spec.ts, NIST StRD.
 */
export function momentsOf(values: ArrayLike<number>): Moments {
  const n = values.length
  if (n === 0) throw new RangeError('momentsOf requires at least one value')
  const first = values[0]!
  let sum = 0
  for (let i = 0; i < n; i++) sum += values[i]! - first
  const middle = sum / n
  let squares = 0
  let rest = 0
  for (let i = 0; i < n; i++) {
    const d = values[i]! - first - middle
    squares += d * d
    rest += d
  }
  return { n, mean: first + (middle + rest / n), squares: Math.max(squares - (rest * rest) / n, 0) }
}

/**
 * Variance with n − 1, in the square of the unit; null for fewer than two values.
 * Source: NIST/SEMATECH e-Handbook 1.3.5.6. Checked: tests/domain/numbers/moments.spec.ts, NIST StRD.
 */
export function varianceOf({ n, squares }: Moments): number | null {
  return n < 2 ? null : squares / (n - 1)
}
