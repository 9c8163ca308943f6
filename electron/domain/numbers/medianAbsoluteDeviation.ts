import { median } from './quantile.ts'

/**
 * Median absolute deviation from the median, in the unit of the values: their spread, which a few wild ones do not move.
 *
 *   MAD = median |xᵢ − median x|      not scaled to the SD of a normal distribution (that would be 1.4826 MAD)
 *
 * Throws RangeError for no values. Source: NIST/SEMATECH e-Handbook 1.3.5.6.
 * Checked: tests/domain/numbers/medianAbsoluteDeviation.spec.ts against scipy.stats.median_abs_deviation.
 */
export function medianAbsoluteDeviation(values: readonly number[]): number {
  const middle = median(values)
  return median(values.map((value) => Math.abs(value - middle)))
}
