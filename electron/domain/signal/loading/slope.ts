import { type Stretch, stretchesBetweenGaps } from '../stream/stretches.ts'
import type { Curve } from '../stream/thinning.ts'

/** Fewest samples that make a slope. */
const leastSamples = 3
/** Times are compared with so much room, as a share of the interval: sums of binary fractions miss by a bit. */
const room = 1e-6

/**
 * Slope of a curve by a straight line of least squares through the samples in a window about each.
 *
 *   slope(t) = Σ (tᵢ − t̄)(xᵢ − x̄) / Σ (tᵢ − t̄)²      over |tᵢ − t| <= window / 2
 *
 * Near the ends of a stretch between gaps the window stays as long as it is and touches the end; it never reaches over a
 * gap. Where it holds fewer than three samples the three nearest are taken; a stretch of fewer than three is left out. On
 * even times this is the first derivative of Savitzky and Golay with polynomials of degree 1 (of degree 2 as well, but for
 * the ends). Goes by time, so uneven samples do no harm. Runs in O(n).
 * In force per second. Throws RangeError for a window that is not above 0.
 * Source: Savitzky and Golay, Analytical Chemistry 36 (1964) 1627. Checked: tests/domain/signal/loading/slope.spec.ts against
 * scipy.signal.savgol_filter(deriv=1) and numpy.polyfit.
 */
export function slopeOfCurve(
  curve: Curve,
  windowS: number,
  stretches: readonly Stretch[] = stretchesBetweenGaps(curve.timeS),
): Curve {
  if (!(windowS > 0)) throw new RangeError('slopeOfCurve requires a window above 0 s')
  const long = stretches.filter(({ from, to }) => to - from >= leastSamples)
  const samples = long.reduce((sum, { from, to }) => sum + to - from, 0)
  const timeS = new Float64Array(samples)
  const slope = new Float64Array(samples)
  let written = 0
  for (const stretch of long) {
    timeS.set(curve.timeS.subarray(stretch.from, stretch.to), written)
    slopeOfStretch(curve, windowS / 2, stretch, slope.subarray(written))
    written += stretch.to - stretch.from
  }
  return { timeS, force: slope }
}

function slopeOfStretch({ timeS, force }: Curve, halfS: number, stretch: Stretch, slope: Float64Array): void {
  const { from, to } = stretch
  const firstCentreS = timeS[from]! + halfS
  const lastCentreS = timeS[to - 1]! - halfS
  const reachS = halfS + room * stretch.intervalS
  let left = from
  let right = from
  let restartAt = from
  // Sums of times and forces from a reference inside the window, so that large offsets cost no digits. The first sample makes them.
  let referenceS = timeS[from]!
  let reference = force[from]!
  let [sumT, sumX, sumTT, sumTX] = [Number.NaN, Number.NaN, Number.NaN, Number.NaN]
  for (let i = from; i < to; i++) {
    const centreS = Math.min(Math.max(timeS[i]!, firstCentreS), lastCentreS)
    const startS = centreS - reachS
    const endS = centreS + reachS
    for (; right < to && timeS[right]! <= endS; right++) {
      const t = timeS[right]! - referenceS
      const x = force[right]! - reference
      sumT += t
      sumX += x
      sumTT += t * t
      sumTX += t * x
    }
    for (; timeS[left]! < startS; left++) {
      const t = timeS[left]! - referenceS
      const x = force[left]! - reference
      sumT -= t
      sumX -= x
      sumTT -= t * t
      sumTX -= t * x
    }
    // Summed anew when all samples have been exchanged, so that rounding does not pile up.
    if (left >= restartAt) {
      referenceS = timeS[left]!
      reference = force[left]!
      sumT = sumX = sumTT = sumTX = 0
      for (let k = left; k < right; k++) {
        const t = timeS[k]! - referenceS
        const x = force[k]! - reference
        sumT += t
        sumX += x
        sumTT += t * t
        sumTX += t * x
      }
      restartAt = right
    }
    const n = right - left
    slope[i - from] =
      n >= leastSamples
        ? (n * sumTX - sumT * sumX) / (n * sumTT - sumT * sumT)
        : slopeOfThree(timeS, force, Math.min(Math.max(i - 1, from), to - leastSamples))
  }
}

function slopeOfThree(timeS: Float64Array, force: Float64Array, at: number): number {
  const t1 = timeS[at + 1]! - timeS[at]!
  const t2 = timeS[at + 2]! - timeS[at]!
  const x1 = force[at + 1]! - force[at]!
  const x2 = force[at + 2]! - force[at]!
  const meanT = (t1 + t2) / 3
  return (t1 * x1 + t2 * x2 - meanT * (x1 + x2)) / (t1 * t1 + t2 * t2 - 3 * meanT * meanT)
}
