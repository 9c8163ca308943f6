import type { LoadedCurve } from './loadedCurve.ts'

/** Quarter of the distribution of |x| for x normal with SD 1, and the SD of a third difference of such values. */
const quarterOfNormal = 0.3186
const thirdDifferenceSD = Math.sqrt(20)
/** So many third differences, spread evenly over the curve, say enough. */
const mostTaken = 1024

/**
 * Noise SD of a mean, found on the first `count` means of a curve: what the noise at rest gives for a mean, or what the curve itself
 * shows under load, whichever is larger.
 *
 *   at rest     σ / sqrt(n)                           σ noise of single samples, n samples in a mean
 *   under load  Q / (0.3186 sqrt(20))                 Q lower quartile of |fᵢ₊₃ − 3 fᵢ₊₂ + 3 fᵢ₊₁ − fᵢ|
 *
 * Third differences leave nothing of a load that is driven evenly, and their lower quartile nothing of strokes and drops.
 * 0.3186: R qnorm(0.625); 20 = 1 + 9 + 9 + 1. Checked: tests/domain/signal/events/noiseOfMeans.spec.ts.
 */
export function noiseOfMeans(curve: Pick<LoadedCurve, 'force' | 'noise' | 'samplesPerMean'>, count: number): number {
  const { force, noise, samplesPerMean } = curve
  const available = Math.max(0, count - 3)
  const thirds = new Float64Array(Math.min(available, mostTaken))
  for (let k = 0; k < thirds.length; k++) {
    const i = Math.floor((k * available) / thirds.length)
    thirds[k] = Math.abs(force[i + 3]! - 3 * force[i + 2]! + 3 * force[i + 1]! - force[i]!)
  }
  thirds.sort()
  const quartile = thirds[thirds.length >> 2] ?? 0
  return Math.max(noise / Math.sqrt(samplesPerMean), quartile / (quarterOfNormal * thirdDifferenceSD))
}
