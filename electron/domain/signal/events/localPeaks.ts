import { meansBeforeBreak } from './curvePart.ts'
import type { LoadedCurve } from './loadedCurve.ts'

/** A high counts when the load falls from it, and has risen to it, by at least this share of the peak ... */
const leastShare = 0.01
/** ... and so many noise SDs of what is compared: ... */
const leastNoise = 6
/** ... means over this time, s, so that ringing comes to nothing. */
const meanS = 0.04

/**
 * Number of local highs of a loading, up to its break, that stand out of the noise; the peak is always one of them.
 *
 *   a high    rises and falls on both sides of it by at least max(0.01 P, 6 σ / sqrt(k)), as the load does at the break
 *             P peak above the level at rest, σ noise SD of a mean, k means in 0.04 s
 *
 * Thresholds: common practice, no source. Checked: tests/domain/signal/events/localPeaks.spec.ts.
 */
export function countPeaks(curve: LoadedCurve, noise: number): number {
  const { force, zero, peak, intervalS, samplesPerMean } = curve
  const count = meansBeforeBreak(curve)
  const joined = Math.max(1, Math.round(meanS / Math.max(samplesPerMean * intervalS, meanS / count)))
  const least = Math.max(leastShare * (peak - zero), (leastNoise * noise) / Math.sqrt(joined))
  let peaks = 0
  let lowest = zero
  let highest = zero
  let rising = true
  for (let from = 0; from + joined <= count; from += joined) {
    let sum = 0
    for (let i = from; i < from + joined; i++) sum += force[i]!
    const mean = sum / joined
    if (rising) {
      highest = Math.max(highest, mean)
      if (highest - mean < least) continue
      peaks += 1
      rising = false
      lowest = mean
    } else {
      lowest = Math.min(lowest, mean)
      if (mean - lowest < least) continue
      rising = true
      highest = mean
    }
  }
  // What was still rising falls with the break, or is where the capture ends.
  return Math.max(1, rising ? peaks + 1 : peaks)
}
