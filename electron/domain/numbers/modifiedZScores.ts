import { medianAbsoluteDeviation } from './medianAbsoluteDeviation.ts'
import { median } from './quantile.ts'

/** 0.75 quantile of the standard normal distribution, in the digits of the source. */
const normalQuartile = 0.6745
/** A spread below this share of the median is rounding, and none. */
const noSpread = 1e-12

/**
 * Modified z-scores: how far each value lies from the median, in units in which a normal distribution has SD 1; null where
 * more than half of the values are the same and there is nothing to measure by.
 *
 *   Mᵢ = 0.6745 (xᵢ − median x) / MAD
 *
 * |M| above 3.5 marks a possible outlier. Throws RangeError for no values.
 * Source: Iglewicz and Hoaglin, How to Detect and Handle Outliers (1993), as in NIST/SEMATECH e-Handbook 1.3.5.17.
 * Checked: tests/domain/numbers/modifiedZScores.spec.ts against scipy.stats.median_abs_deviation.
 */
export function modifiedZScores(values: readonly number[]): number[] | null {
  const middle = median(values)
  const spread = medianAbsoluteDeviation(values)
  if (!(spread > noSpread * Math.abs(middle))) return null
  return values.map((value) => (normalQuartile * (value - middle)) / spread)
}
