/** A curve as two arrays of one length; times rise. */
export type Curve = { timeS: Float64Array; force: Float64Array }

/**
 * The part of a curve from `fromS` to `toS` with one sample more on either side, so that a line drawn through it reaches
 * the edges of the view. null: no limit. Shares the memory of the curve.
 *
 * Checked: tests/domain/signal/stream/thinning.spec.ts.
 */
export function cutToRange(curve: Curve, fromS: number | null, toS: number | null): Curve {
  const { timeS, force } = curve
  const from = fromS === null ? 0 : Math.max(0, firstAtOrAfter(timeS, fromS) - 1)
  const to = toS === null ? timeS.length : Math.min(timeS.length, firstAtOrAfter(timeS, toS) + 1)
  return { timeS: timeS.subarray(from, Math.max(from, to)), force: force.subarray(from, Math.max(from, to)) }
}

function firstAtOrAfter(timeS: Float64Array, wantedS: number): number {
  let low = 0
  let high = timeS.length
  while (low < high) {
    const middle = (low + high) >>> 1
    if (timeS[middle]! < wantedS) low = middle + 1
    else high = middle
  }
  return low
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
  const thinTimeS = new Float64Array(2 * stretches + 2)
  const thinForce = new Float64Array(2 * stretches + 2)
  let written = 0
  const keep = (index: number) => {
    thinTimeS[written] = timeS[index]!
    thinForce[written] = force[index]!
    written += 1
  }
  keep(0)
  const inner = samples - 2
  for (let stretch = 0; stretch < stretches; stretch++) {
    const from = 1 + Math.floor((stretch * inner) / stretches)
    const to = 1 + Math.floor(((stretch + 1) * inner) / stretches)
    let low = from
    let high = from
    for (let i = from + 1; i < to; i++) {
      if (force[i]! < force[low]!) low = i
      if (force[i]! > force[high]!) high = i
    }
    keep(Math.min(low, high))
    if (low !== high) keep(Math.max(low, high))
  }
  keep(samples - 1)
  return { timeS: thinTimeS.subarray(0, written), force: thinForce.subarray(0, written) }
}
