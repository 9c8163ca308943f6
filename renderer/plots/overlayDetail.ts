import { samplesIn } from './minMaxLevels.ts'
import { curveExtent, type OverlayCurve } from './overlayCurve.ts'
import { type DrawnCurve, inView } from './overlayPicture.ts'
import type { Span } from './zoom.ts'

/** A stretch of a stored curve, in its own time. */
export type FinerStretch = { key: number; fromS: number; toS: number }

/**
 * What has to be asked for so that a view of so many columns shows every curve as finely as it is stored: the view with half
 * of it more on either side, of each curve that was thinned on its way and shows fewer than two points a column.
 */
export function finerStretches(curves: readonly DrawnCurve[], span: Span, columns: number): FinerStretch[] {
  const beside = (span.toS - span.fromS) / 2
  const found: FinerStretch[] = []
  for (const drawn of curves) {
    const { curve } = drawn
    const extent = curveExtent(curve)
    if (extent === null || extent.to < span.fromS || extent.from > span.toS) continue
    const { levels, complete } = inView(drawn, span)
    if (complete) continue
    const inCurve = (at: number) => at * curve.timeUnit + curve.originS
    const { from, to } = samplesIn(levels.timeS, inCurve(span.fromS), inCurve(span.toS))
    if (to - from >= 2 * shareCovered(extent, span) * columns) continue
    found.push({ key: curve.key, fromS: inCurve(span.fromS - beside), toS: inCurve(span.toS + beside) })
  }
  return found
}

function shareCovered(extent: { from: number; to: number }, span: Span): number {
  return (Math.min(extent.to, span.toS) - Math.max(extent.from, span.fromS)) / (span.toS - span.fromS)
}

/** The narrowest view worth having: about eight samples of the curve that was sampled fastest. */
export function narrowestSpan(curves: readonly OverlayCurve[]): number {
  let least = Number.POSITIVE_INFINITY
  for (const curve of curves) {
    const extent = curveExtent(curve)
    if (extent === null || curve.samples < 2) continue
    least = Math.min(least, (8 * (extent.to - extent.from)) / curve.samples)
  }
  return Number.isFinite(least) && least > 0 ? least : 1e-3
}

/** From the first sample of all curves to the last; from 0 to 1 where there is none. */
export function wholeSpan(curves: readonly OverlayCurve[]): Span {
  let fromS = Number.POSITIVE_INFINITY
  let toS = Number.NEGATIVE_INFINITY
  for (const curve of curves) {
    const extent = curveExtent(curve)
    if (extent === null) continue
    fromS = Math.min(fromS, extent.from)
    toS = Math.max(toS, extent.to)
  }
  return toS > fromS ? { fromS, toS } : { fromS: 0, toS: 1 }
}
