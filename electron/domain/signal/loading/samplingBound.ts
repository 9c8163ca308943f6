/**
 * How far the true peak can lie above the highest sample on a ramp that ends in a break, in N.
 *
 *   bound = max(0, r) (dt + ts)      r loading rate N/s, dt sample interval s, ts settling time of the converter s
 *
 * Throws RangeError for a rate that is not finite, an interval that is not above 0 or a settling time below 0.
 * Checked: tests/domain/signal/loading/samplingBound.spec.ts against a table of rates and sample rates.
 */
export function samplingBound(rateNPerS: number, intervalS: number, settlingTimeS: number): number {
  if (!Number.isFinite(rateNPerS)) throw new RangeError('samplingBound requires a finite loading rate')
  if (!(intervalS > 0)) throw new RangeError('samplingBound requires an interval above 0 s')
  if (!(settlingTimeS >= 0)) throw new RangeError('samplingBound requires a settling time of 0 s or more')
  return Math.max(0, rateNPerS) * (intervalS + settlingTimeS)
}

/**
 * The sampling bound in percent of the peak; null where the peak is not above 0.
 *
 *   100 bound / peak
 *
 * Checked: tests/domain/signal/loading/samplingBound.spec.ts.
 */
export function boundPercent(boundN: number, peakN: number): number | null {
  return peakN > 0 ? (100 * boundN) / peakN : null
}
