import { isWhole, type PlotView } from '../viewKeys.ts'
import type { Span } from '../zoom.ts'
import type { OverlayCurve } from './overlayCurve.ts'
import { type DrawnCurve, narrowestSpan, rangeInView, wholeSpan } from './overlayView.ts'

/** How long the view must have been at rest before finer samples are asked for, ms. */
const restMs = 250

type Range = { bottom: number; top: number }

/** Which stretch of the curves is looked at, and which range of values. */
export type OverlayStretch = {
  view(): Omit<PlotView, 'cursorS'>
  /** The range of values in view: the one chosen, else what the curves need there, in shown units. */
  range(curves: readonly DrawnCurve[], factor: number): Range
  /** Keeps a range of values until all is shown; null: what is in view fits again. */
  chooseRange(range: Range | null): void
  show(wanted: Span | null): void
  /** Other curves; `lieElsewhere`: those that stay have moved on the axis. */
  setCurves(curves: readonly OverlayCurve[], lieElsewhere: boolean): void
  end(): void
}

/** `onMove` is told of another view, `onRest` when it has stood still for a while. */
export function createOverlayStretch(options: {
  onSpan(span: Span, whole: Span): void
  onMove(): void
  onRest(): void
}): OverlayStretch {
  let whole: Span = { fromS: 0, toS: 1 }
  let span: Span = whole
  let leastS = narrowestSpan([])
  /** Chosen by drawing a rectangle; null: what is in view fits. */
  let chosen: Range | null = null
  let restTimer: ReturnType<typeof setTimeout> | undefined
  return {
    view: () => ({ span, whole, leastS }),
    range(curves, factor) {
      if (chosen !== null) return chosen
      const { low, high } = rangeInView(curves, span, factor)
      const top = high > 0 ? high * 1.1 : 1
      return { bottom: Math.min(low * 1.05, -0.03 * top), top }
    },
    chooseRange(range) {
      chosen = range
    },
    show(wanted) {
      span = wanted ?? whole
      if (wanted === null) chosen = null
      options.onSpan(span, whole)
      options.onMove()
      clearTimeout(restTimer)
      restTimer = setTimeout(options.onRest, restMs)
    },
    setCurves(curves, lieElsewhere) {
      const wasWhole = isWhole({ span, whole })
      whole = wholeSpan(curves)
      leastS = narrowestSpan(curves)
      if (lieElsewhere) chosen = null
      if (wasWhole || lieElsewhere || span.toS <= whole.fromS || span.fromS >= whole.toS) span = whole
      options.onSpan(span, whole)
    },
    end: () => clearTimeout(restTimer),
  }
}
