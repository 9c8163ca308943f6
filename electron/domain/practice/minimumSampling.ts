/**
 * Lowest sampling frequency at which a ramp rises by no more than a share of its peak from one sample to the next, Hz.
 *
 *   f = r / (P q / 100)      r loading rate N/s, P peak N, q percent of the peak
 *
 * Throws RangeError for a rate, a peak or a share that is not above 0. Source: ISO 6892-1 Annex A (from memory; check against
 * the standard). Checked: tests/domain/practice/minimumSampling.spec.ts.
 */
export function minimumSamplingHz(rateNPerS: number, peakN: number, sharePercent: number): number {
  if (!(rateNPerS > 0 && peakN > 0 && sharePercent > 0) || !Number.isFinite(rateNPerS))
    throw new RangeError('minimumSamplingHz requires a rate, a peak and a share above 0')
  return rateNPerS / ((peakN * sharePercent) / 100)
}
