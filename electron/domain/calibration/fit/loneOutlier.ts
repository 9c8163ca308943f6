/** A reading so many times the spread of all others away from their mean is no noise. */
const spreads = 10

/**
 * Whether one value of a window is an electrical glitch: more than 10 sample SDs of the others away from their mean.
 *
 *   |x_e − x̄'| > 10 s'      x_e the value farthest from the mean; x̄', s' mean and sample SD of the others
 *
 * Others without any spread tell nothing, and then no value is one. Fewer than five values: none.
 * Source: common practice, no source. Checked: tests/domain/calibration/fit/loneOutlier.spec.ts.
 */
export function hasLoneOutlier(values: readonly number[]): boolean {
  const n = values.length
  if (n < 5) return false
  const mean = values.reduce((sum, value) => sum + value, 0) / n
  const far = values.reduce((found, value) => (Math.abs(value - mean) > Math.abs(found - mean) ? value : found))
  const others = mean + (mean - far) / (n - 1)
  let squares = -((far - others) ** 2)
  for (const value of values) squares += (value - others) ** 2
  const sd = Math.sqrt(Math.max(0, squares) / (n - 2))
  return sd > 0 && Math.abs(far - others) > spreads * sd
}
