import type { ColumnSpans } from '../columnSpans.ts'
import type { PointMark } from '../recorded/plotMarks.ts'
import { type OverlayCurve, valueAt } from './overlayCurve.ts'
import type { OverlayPicture, OverlayView } from './overlayPicture.ts'

/** With no more curves than this each is named. */
const fewCurves = 6

/**
 * What is named in a view: outlying curves where they lie farthest off, and the curve that stands out (or all, when they are
 * few) at its highest point in view.
 */
export function overlayMarks(
  curves: readonly OverlayCurve[],
  emphasis: number | null,
  view: OverlayView,
  picture: OverlayPicture,
): PointMark[] {
  const marks: PointMark[] = []
  for (const { outlying, ...curve } of curves) {
    const value = outlying === null ? null : valueAt(curve, outlying.at)
    if (outlying !== null && value !== null)
      marks.push({
        timeS: outlying.at,
        value: value * view.factor,
        label: `${curve.label}: ${outlying.words}`,
        shape: 'event',
      })
  }
  for (const curve of curves) {
    const named = emphasis === null ? curves.length <= fewCurves && curve.outlying === null : curve.key === emphasis
    if (!named) continue
    const spans = picture.spansOf(curve.key)
    const highest = spans === null ? null : highestPoint(spans, view, picture.pixels.rows)
    if (highest !== null) marks.push({ ...highest, label: curve.label, shape: 'onset' })
  }
  return marks
}

function highestPoint({ top }: ColumnSpans, { span, ...view }: OverlayView, rows: number) {
  let best = -1
  for (let column = 0; column < top.length; column++)
    if (top[column]! >= 0 && top[column]! < rows && (best < 0 || top[column]! < top[best]!)) best = column
  if (best < 0) return null
  return {
    timeS: span.fromS + ((best + 0.5) / top.length) * (span.toS - span.fromS),
    value: view.top - (top[best]! / rows) * (view.top - view.bottom),
  }
}
