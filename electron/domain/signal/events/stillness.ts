import { firstAfter } from './curvePart.ts'
import type { LoadedCurve } from './loadedCurve.ts'
import { lineThrough } from './straightLine.ts'

/** A slope is below the usual rate for certain when it is so many SDs below it that noise alone makes. */
const stillErrors = 3
/** Falls of this share of the load, together most of what it came down by, between means over this time, s, are cracks and no pause. */
const crackShare = 0.045
const crackOfFall = 0.55
const crackMeanS = 0.3
const crackNoise = 4

/**
 * True when the slope of a stretch is below `most`, and noise alone does not make it so on a load that is driven at the usual rate.
 *
 *   b < most  and  r − b >= 3 σ / sqrt(n Σ (t − t̄)²)      b least squares slope, r usual rate, means of n samples of noise SD σ
 *
 * Threshold: common practice, no source. Checked: tests/domain/signal/events/stillness.spec.ts.
 */
export function stands(curve: LoadedCurve, fromS: number, toS: number, most: number, rate: number): boolean {
  const line = lineThrough(curve.timeS, curve.force, firstAfter(curve, fromS), firstAfter(curve, toS))
  if (line === null || !(line.slope < most)) return false
  const slopeSD = curve.noise / Math.sqrt(curve.samplesPerMean * line.squaresS2)
  return rate - line.slope >= stillErrors * slopeSD
}

/**
 * True when most of what a load came down by in a stretch, from `high` to `lowest`, went at once, or in several cracks.
 *
 *   Σ (A − B) >= 0.55 (high − lowest)     over the falls A − B >= max(0.045 L, 4 σ sqrt(2 / n)), the most of each
 *                                         A, B means of n samples over 0.3 s, side by side; L load at `high`, σ noise SD
 *                                         of a sample
 *
 * Thresholds: common practice, no source. Checked: tests/domain/signal/events/stillness.spec.ts.
 */
export function cracked(curve: LoadedCurve, fromS: number, toS: number, high: number, lowest: number): boolean {
  const { force, intervalS, samplesPerMean, noise, zero } = curve
  const width = intervalS > 0 ? Math.max(2, Math.round(crackMeanS / (intervalS * samplesPerMean))) : 2
  const least = Math.max(crackShare * (high - zero), crackNoise * noise * Math.sqrt(2 / (samplesPerMean * width)))
  const begin = Math.max(0, firstAfter(curve, fromS) - width)
  const end = Math.min(force.length, firstAfter(curve, toS))
  // One mean between the two belongs to neither: the fall may lie in it.
  let before = 0
  let after = 0
  for (let i = 0; i < width; i++) {
    before += force[begin + i] ?? 0
    after += force[begin + width + 1 + i] ?? 0
  }
  let cracks = 0
  let crack = 0
  for (let middle = begin + width; middle + width < end; middle++) {
    const fall = (before - after) / width
    if (fall >= least) crack = Math.max(crack, fall)
    else {
      cracks += crack
      crack = 0
    }
    before += force[middle]! - force[middle - width]!
    after += (force[middle + width + 1] ?? 0) - force[middle + 1]!
  }
  cracks += crack
  return cracks > 0 && cracks >= crackOfFall * (high - lowest)
}
