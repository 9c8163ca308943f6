export type EwmaChart = {
  /** The smoothed value after each value, in order. */
  readonly smoothed: readonly number[]
  readonly lower: number
  readonly upper: number
}

/**
 * Exponentially weighted moving average with its limits, in the unit of the values: sees a slow drift early.
 *
 *   z₀ = target,  zᵢ = λ xᵢ + (1 − λ) zᵢ₋₁      limits = target ± 3 s sqrt( λ / (2 − λ) )
 *
 * Throws RangeError for λ outside 0..1 (0 excluded), a negative SD or a value that is not finite.
 * Source: NIST/SEMATECH e-Handbook 6.3.2.4. Checked: tests/domain/calibration/control/ewmaChart.spec.ts.
 */
export function ewmaChart(values: readonly number[], target: number, sd: number, lambda = 0.3): EwmaChart {
  if (!(lambda > 0 && lambda <= 1)) throw new RangeError('ewmaChart requires a weight above 0 and up to 1')
  if (!(sd >= 0) || !Number.isFinite(target) || !values.every(Number.isFinite))
    throw new RangeError('ewmaChart requires finite values and an SD of 0 or more')
  let last = target
  const smoothed = values.map((value) => {
    last = lambda * value + (1 - lambda) * last
    return last
  })
  const reach = 3 * sd * Math.sqrt(lambda / (2 - lambda))
  return { smoothed, lower: target - reach, upper: target + reach }
}
