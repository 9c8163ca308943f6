/** A verified force must be at least so many times the resolution. */
export const resolutionMultiple = 200

/**
 * Verified range in N: lowest to highest force applied, from 200 times the resolution on; null when nothing is left.
 *
 *   low = max( F_lowest, 200 r )      high = F_highest
 *
 * Zero points are no applied force. r resolution N; null: not known, and the rule is then not applied.
 * Throws RangeError for a resolution that is negative.
 * Source: ASTM E4-16 §10.1. Checked: tests/domain/calibration/steps/verifiedRange.spec.ts.
 */
export function verifiedRangeN(forcesN: readonly number[], resolutionN: number | null): [number, number] | null {
  if (resolutionN !== null && !(resolutionN >= 0))
    throw new RangeError('verifiedRangeN requires a resolution of 0 or more')
  const applied = forcesN.filter((forceN) => forceN > 0)
  if (applied.length === 0) return null
  const low = Math.max(Math.min(...applied), resolutionMultiple * (resolutionN ?? 0))
  const high = Math.max(...applied)
  return low <= high ? [low, high] : null
}
