/** Ratio of the mean range of two normal values to their SD: the table value d2 for n = 2, as charts use it. */
const rangeOverSD = 1.128
/** Upper limit of a moving range over its mean: D4 for n = 2. */
const rangeUpperFactor = 3.267

/** Limits of a chart of individual values and of their moving ranges, in the unit of the values. */
export type IndividualsChart = {
  readonly centre: number
  readonly meanMovingRange: number
  readonly lower: number
  readonly upper: number
  readonly movingRangeUpper: number
}

/**
 * Centre and three-sigma limits of individual values from their moving ranges, in the unit of the values.
 *
 *   centre = x̄      limits = x̄ ± 3 M̄R / 1.128      M̄R = mean of |xᵢ − xᵢ₋₁|      upper limit of MR = 3.267 M̄R
 *
 * Throws RangeError for fewer than two values or a value that is not finite.
 * Source: NIST/SEMATECH e-Handbook 6.3.2.2. Checked: tests/domain/calibration/control/individualsChart.spec.ts.
 */
export function individualsChart(values: readonly number[]): IndividualsChart {
  if (values.length < 2 || !values.every(Number.isFinite))
    throw new RangeError('individualsChart requires at least two finite values')
  const centre = values.reduce((sum, value) => sum + value, 0) / values.length
  const ranges = values.slice(1).map((value, index) => Math.abs(value - values[index]!))
  const meanMovingRange = ranges.reduce((sum, range) => sum + range, 0) / ranges.length
  const reach = (3 * meanMovingRange) / rangeOverSD
  return {
    centre,
    meanMovingRange,
    lower: centre - reach,
    upper: centre + reach,
    movingRangeUpper: rangeUpperFactor * meanMovingRange,
  }
}
