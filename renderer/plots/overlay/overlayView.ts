import { samplesIn } from '#domain/signal/stream/thinning.ts'
import { forceRange, type MinMaxLevels } from '../minMaxLevels.ts'
import type { Span } from '../zoom.ts'
import { curveExtent, liesElsewhere, type OverlayCurve } from './overlayCurve.ts'

/** A stretch of a curve fetched once more; complete: none of its samples was left out. */
export type FineStretch = { levels: MinMaxLevels; complete: boolean }
/** A curve with the finer stretch that was fetched for the view, if one was. */
export type DrawnCurve = { curve: OverlayCurve; fine: FineStretch | null }

/** A stretch of a stored curve, in its own time. */
export type FinerStretch = { key: number; fromS: number; toS: number }

/** The finer stretch where it reaches over all of the curve that is in view, else what was fetched of the whole curve. */
export function inView({ curve, fine }: DrawnCurve, span: Span): FineStretch {
  const whole = { levels: curve.levels, complete: curve.samples <= curve.levels.timeS.length }
  const extent = curveExtent(curve)
  if (fine === null || extent === null || fine.levels.timeS.length < 2) return whole
  const { timeS } = fine.levels
  const at = (time: number) => (time - curve.originS) / curve.timeUnit
  const from = Math.max(span.fromS, extent.from)
  const to = Math.min(span.toS, extent.to)
  return at(timeS[0]!) <= from && at(timeS[timeS.length - 1]!) >= to ? fine : whole
}

/** Lowest and highest shown value of all curves in view, 0 always between them. */
export function rangeInView(curves: readonly DrawnCurve[], span: Span, factor: number): { low: number; high: number } {
  let low = 0
  let high = 0
  for (const drawn of curves) {
    const { originS, timeUnit, forceUnit } = drawn.curve
    const { levels } = inView(drawn, span)
    const { from, to } = samplesIn(levels.timeS, span.fromS * timeUnit + originS, span.toS * timeUnit + originS)
    const range = forceRange(levels, from, to)
    if (range === null) continue
    low = Math.min(low, (range.lowest / forceUnit) * factor)
    high = Math.max(high, (range.highest / forceUnit) * factor)
  }
  return { low, high }
}

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

/** The curves with others in their place; one that stays keeps its finer samples. `lieElsewhere`: one has moved on the axis. */
export function withNewCurves(
  before: readonly DrawnCurve[],
  next: readonly OverlayCurve[],
): { drawn: DrawnCurve[]; lieElsewhere: boolean } {
  const known = new Map(before.map((drawn) => [drawn.curve.key, drawn]))
  const drawn = next.map((curve) => {
    const same = known.get(curve.key)
    return { curve, fine: same?.curve.levels === curve.levels ? same.fine : null }
  })
  const lieElsewhere = next.some((curve) => {
    const same = known.get(curve.key)
    return same !== undefined && liesElsewhere(curve, same.curve)
  })
  return { drawn, lieElsewhere }
}
