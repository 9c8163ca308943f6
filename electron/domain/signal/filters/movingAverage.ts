import { type Stretch, stretchesBetweenGaps } from '../stream/stretches.ts'
import type { Curve } from '../stream/thinning.ts'

/** Times are compared with so much room, as a share of the interval: 2 × 0.1 s is not 0.3 s − 0.1 s in binary. */
const room = 1e-6

/**
 * Mean force over a window of time about each sample.
 *
 *   y(t) = mean of x over [t − h, t + h]      h half the window, less near the ends of a stretch: no farther than the end
 *
 * Goes by time, so uneven samples do no harm; never reaches over a gap. At the ends the window stays centred, so that a
 * ramp is not bent; the end samples stand as they are. Runs in O(n).
 * For looking at a curve, never for its peak: the window lowers the peak of a ramp and drop.
 * Throws RangeError for a window that is not above 0. Source: common practice, no source.
 * Checked: tests/domain/signal/filters/movingAverage.spec.ts against numpy.convolve.
 */
export function movingAverage(
  curve: Curve,
  windowS: number,
  stretches: readonly Stretch[] = stretchesBetweenGaps(curve.timeS),
): Float64Array {
  if (!(windowS > 0)) throw new RangeError('movingAverage requires a window above 0 s')
  const smoothed = new Float64Array(curve.force.length)
  for (const stretch of stretches) averageStretch(curve, windowS / 2, stretch, smoothed)
  return smoothed
}

function averageStretch({ timeS, force }: Curve, halfS: number, stretch: Stretch, smoothed: Float64Array): void {
  const { from, to } = stretch
  const startS = timeS[from]!
  const endS = timeS[to - 1]!
  // A single sample has no interval.
  const roomS = room * (stretch.intervalS || halfS)
  let left = from
  let right = from
  let restartAt = from
  let reference = force[from]!
  let sum = Number.NaN
  for (let i = from; i < to; i++) {
    const centreS = timeS[i]!
    const reachS = Math.min(halfS, centreS - startS, endS - centreS) + roomS
    while (timeS[right]! <= centreS + reachS) sum += force[right++]! - reference
    while (timeS[left]! < centreS - reachS) sum -= force[left++]! - reference
    // Summed at first, and anew when all samples have been exchanged, so that rounding does not pile up.
    if (left >= restartAt) {
      reference = force[left]!
      sum = 0
      for (let k = left; k < right; k++) sum += force[k]! - reference
      restartAt = right
    }
    smoothed[i] = reference + sum / (right - left)
  }
}
