/**
 * A straight line through some points of a curve; `residualSD` has n − 2 degrees of freedom, NaN for two points. Noise of SD σ in
 * each point makes an SD of σ / sqrt(squaresS2) in the slope.
 */
export type StraightLine = { slope: number; meanS: number; mean: number; residualSD: number; squaresS2: number }

/**
 * Straight line by least squares through the points [from, to) of a curve; null for fewer than two points.
 *
 *   b = Σ (t − t̄) (F − F̄) / Σ (t − t̄)²      squaresS2 = Σ (t − t̄)²      s² = Σ (F − F̄ − b (t − t̄))² / (n − 2)
 *
 * Centred first, so that a large common time does no harm. Source: NIST/SEMATECH e-Handbook 4.1.4.1. Checked:
 * tests/domain/signal/events/straightLine.spec.ts against scipy.stats.linregress.
 */
export function lineThrough(timeS: Float64Array, force: Float64Array, from: number, to: number): StraightLine | null {
  const count = to - from
  let meanS = 0
  let mean = 0
  for (let i = from; i < to; i++) {
    meanS += timeS[i]!
    mean += force[i]!
  }
  meanS /= count
  mean /= count
  let stt = 0
  let stf = 0
  for (let i = from; i < to; i++) {
    const t = timeS[i]! - meanS
    stt += t * t
    stf += t * (force[i]! - mean)
  }
  if (!(stt > 0)) return null
  const slope = stf / stt
  let squares = 0
  for (let i = from; i < to; i++) squares += (force[i]! - mean - slope * (timeS[i]! - meanS)) ** 2
  return { slope, meanS, mean, residualSD: count > 2 ? Math.sqrt(squares / (count - 2)) : Number.NaN, squaresS2: stt }
}
