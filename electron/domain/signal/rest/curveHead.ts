import { medianOfSorted } from '../../numbers/quantile.ts'

/** What the first moment of a stream tells: is the bench at rest, at what level, with how much noise? */
export type CurveHead = {
  atRest: boolean
  level: number
  /** Noise SD about the head's own straight line. */
  noise: number
}

/** Median absolute deviation to SD of a normal distribution, 1 / Φ⁻¹(3/4). */
const deviationToSd = 1.4826022185056018
/** A sample further from the line than so many of these is a glitch or a knock, no noise. */
const outlierMultiple = 10
/** A rise or fall over the head of more than so many noise SDs is no rest. */
const restNoiseMultiple = 4

const median = (values: Float64Array) => medianOfSorted(values.slice().sort())

/**
 * Judges the first samples of a stream (at least one).
 *
 *   line    through the medians of the first and the last third of the samples
 *   s       1.4826 × median |residual about the line|, which one glitch or knock does not move
 *   noise   SD about the line, sqrt( Σ r² / (n − 2) ), of the n residuals |r| <= 10 s; s itself for fewer than 5
 *   at rest |rise of the line| <= max(4 noise, allowed)
 *   level   at rest the median of all; rising: 0, the zero of the tare, unless the head starts below it; falling: the
 *           start, since the level at rest will follow down
 *
 * The median alone would be a poor guess: of nine samples of white noise it gives less than half the SD in 24 of 100 streams,
 * the SD of sixteen in 2 of 1000, and a start threshold made from it would start loadings at rest.
 * Throws RangeError for no samples. Checked: tests/domain/signal/rest/curveHead.spec.ts.
 */
export function judgeHead(timesS: Float64Array, force: Float64Array, count: number, allowed: number): CurveHead {
  if (count < 1) throw new RangeError('judgeHead requires at least one sample')
  const third = Math.max(1, Math.floor(count / 3))
  const early = median(force.subarray(0, third))
  const late = median(force.subarray(count - third, count))
  // Times rise, so they are sorted already.
  const earlyS = medianOfSorted(timesS.subarray(0, third))
  const lateS = medianOfSorted(timesS.subarray(count - third, count))
  const slope = lateS > earlyS ? (late - early) / (lateS - earlyS) : 0
  const distances = force.subarray(0, count).map((value, i) => Math.abs(value - early - slope * (timesS[i]! - earlyS)))
  const noise = spread(distances)
  const rise = late - early
  if (Math.abs(rise) <= Math.max(restNoiseMultiple * noise, allowed))
    return { atRest: true, level: median(force.subarray(0, count)), noise }
  if (rise < 0) return { atRest: false, level: early, noise }
  return { atRest: false, level: Math.min(0, force[0]!), noise }
}

/** SD of what are distances from a line, wild ones left out. */
function spread(distances: Float64Array): number {
  const middle = deviationToSd * median(distances)
  const kept = distances.filter((distance) => distance <= outlierMultiple * middle)
  if (kept.length < 5) return middle
  return Math.sqrt(kept.reduce((sum, distance) => sum + distance * distance, 0) / (kept.length - 2))
}
