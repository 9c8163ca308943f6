import { firstAtOrAfter } from '#domain/numbers/risingSearch.ts'
import { type Curve, thinByMinMax } from '#domain/signal/stream/thinning.ts'
import type { Span } from './curveScene.ts'

/** Parts of a curve between places where samples are missing, in order of time; gaps in order of time. */
export function stretchesBetween({ timeS, force }: Curve, gaps: readonly Span[]): Curve[] {
  const stretches: Curve[] = []
  let from = 0
  for (const { toS } of [...gaps, { toS: Number.POSITIVE_INFINITY }]) {
    const to = firstAtOrAfter(timeS, toS)
    if (to > from) stretches.push({ timeS: timeS.subarray(from, to), force: force.subarray(from, to) })
    from = Math.max(from, to)
  }
  return stretches
}

/**
 * A curve for a figure so many pixels wide: about two samples a pixel, the lowest and the highest of each, so that no peak
 * is lost; a stretch for each part between gaps.
 */
export function thinnedCurve(curve: Curve, gaps: readonly Span[], widthPx: number): Curve[] {
  const samples = curve.timeS.length
  return stretchesBetween(curve, gaps).map((stretch) => {
    const share = stretch.timeS.length / samples
    return thinByMinMax(stretch, Math.max(Math.ceil(2 * widthPx * share), 4))
  })
}
