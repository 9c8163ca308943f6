import { type Extremes, findExtremes } from '../../numbers/extremes.ts'
import { firstAtOrAfter } from '../../numbers/risingSearch.ts'

/** A curve as two arrays of one length; times rise. */
export type Curve = { timeS: Float64Array; force: Float64Array }

/** Samples [from, to): those of a span of time, and one more on either side where there is one. Times rise. */
export function samplesIn(timeS: Float64Array, fromS: number, toS: number): { from: number; to: number } {
  return {
    from: Math.max(firstAtOrAfter(timeS, fromS) - 1, 0),
    to: Math.min(firstAtOrAfter(timeS, toS) + 1, timeS.length),
  }
}

/**
 * The part of a curve from `fromS` to `toS` with one sample more on either side, so that a line drawn through it reaches
 * the edges of the view. null: no limit. Shares the memory of the curve.
 *
 * Checked: tests/domain/signal/stream/thinning.spec.ts.
 */
export function cutToRange({ timeS, force }: Curve, fromS: number | null, toS: number | null): Curve {
  const { from, to } = samplesIn(timeS, fromS ?? Number.NEGATIVE_INFINITY, toS ?? Number.POSITIVE_INFINITY)
  return { timeS: timeS.subarray(from, Math.max(from, to)), force: force.subarray(from, Math.max(from, to)) }
}

/**
 * A curve thinned to at most `maxPoints` samples of itself: first and last, and the lowest and highest of each of
 * (maxPoints − 2) / 2 stretches of equal count, in order of time. Highest and lowest sample of the whole are always kept.
 * A curve that is short enough is handed back as it is. Runs in O(n).
 *
 * Throws RangeError for fewer than 4 points or arrays of unequal length. Checked: tests/domain/signal/stream/thinning.spec.ts.
 */
export function thinByMinMax(curve: Curve, maxPoints: number): Curve {
  const { timeS, force } = curve
  const samples = timeS.length
  if (force.length !== samples) throw new RangeError('thinByMinMax requires arrays of one length')
  if (!(maxPoints >= 4)) throw new RangeError('thinByMinMax requires at least 4 points')
  if (samples <= maxPoints) return curve
  const stretches = Math.floor((maxPoints - 2) / 2)
  const thinTimeS = new Float64Array(maxPoints)
  const thinForce = new Float64Array(maxPoints)
  let written = 0
  const keep = (index: number) => {
    thinTimeS[written] = timeS[index]!
    thinForce[written] = force[index]!
    written += 1
  }
  const found: Extremes = { first: Number.NaN, second: Number.NaN }
  const forceAt = (index: number) => force[index]!
  keep(0)
  const inner = samples - 2
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = 1 + Math.floor((stretch * inner) / stretches)
    const to = 1 + Math.floor(((stretch + 1) * inner) / stretches)
    findExtremes(forceAt, from, to, found)
    keep(found.first)
    if (found.second !== found.first) keep(found.second)
  }
  keep(samples - 1)
  return { timeS: thinTimeS.subarray(0, written), force: thinForce.subarray(0, written) }
}
