import { firstAfter } from './curvePart.ts'
import { levelTimes } from './levelTimes.ts'
import type { LoadedCurve } from './loadedCurve.ts'
import { lineThrough } from './straightLine.ts'

/** The seated part begins where slack is taken up, and not below this share of the peak ... */
const fromShare = 0.15
/** ... and ends at this one, before the specimen begins to give, or where the load first fell or was held. */
const toShare = 0.6
/** It is at least so much of the peak. */
const leastShare = 0.15
const leastMeans = 5
/** A load that leaves the line by more than this share of the peak (SD), and than noise explains, was held, dropped or pumped. */
const straightShare = 0.02
const noiseMultiple = 3
/** A line that meets the level at rest before the onset, by more than this share of its middle's time from there, shows no slack. */
const earlyShare = 0.1

/**
 * Toe compensation, offered and never applied to the peak: the straight line through the straight part of a loading meets the
 * level at rest at `zeroTimeS`, s; `slopeNPerS` is its slope.
 *
 *   F = F0 + b (t − zeroTimeS)      by least squares between the end of seating (0.15 of the peak at least) and 0.6 of the peak
 *
 * `drivenUntilS` is when the load first fell or was held; null: it never did. null: less than 0.15 of the peak or fewer than
 * five means, a slope that does not rise, a load that is not straight there, or that rose faster before, which leaves no slack to
 * take off. Thresholds: common practice, no
 * source; the construction is that of the toe compensation of ASTM D638, Annex A1 (from memory; check against the standard).
 * Checked: tests/domain/signal/events/toe.spec.ts against a parabola and line with an exact answer.
 */
export function toeLine(
  curve: Pick<LoadedCurve, 'timeS' | 'force' | 'zero' | 'noise' | 'samplesPerMean' | 'peak' | 'onsetS'>,
  seatedS: number | null,
  drivenUntilS: number | null,
): { zeroTimeS: number; slopeNPerS: number } | null {
  const { timeS, force, zero } = curve
  const load = curve.peak - zero
  const reachedS = levelTimes(timeS, force, [zero + fromShare * load, zero + toShare * load])
  const [fromS, toS] = [reachedS[0]!, reachedS[1]!]
  const from = firstAfter(curve, Math.max(fromS, seatedS ?? fromS))
  const to = firstAfter(curve, Math.min(toS, drivenUntilS ?? toS))
  if (!(to - from >= leastMeans) || force[to - 1]! - force[from]! < leastShare * load) return null
  const line = lineThrough(timeS, force, from, to)
  if (line === null || !(line.slope > 0)) return null
  const explained = (noiseMultiple * curve.noise) / Math.sqrt(curve.samplesPerMean)
  if (line.residualSD > Math.max(straightShare * load, explained)) return null
  const zeroTimeS = line.meanS - (line.mean - zero) / line.slope
  if (zeroTimeS < curve.onsetS - earlyShare * (line.meanS - curve.onsetS)) return null
  return { zeroTimeS, slopeNPerS: line.slope }
}
