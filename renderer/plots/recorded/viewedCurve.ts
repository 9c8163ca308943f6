import type { ForceCurve } from '#contract/breaks/curve.ts'
import { isWhole, type PlotView } from '../viewKeys.ts'
import type { Span } from '../zoom.ts'
import { type CurveStretches, createCurveStretches, type LoadCurve } from './curveStretches.ts'
import { leastSpanS, spanOf } from './recordedView.ts'

/** A turning wheel moves the view many times before finer samples are worth asking for. */
const fetchDelayMs = 60

/** What is looked at of a stored curve, and of a second one beside it. */
export type ViewedCurve = {
  curve(): ForceCurve | null
  beside(): ForceCurve | null
  view(): Omit<PlotView, 'cursorS'>
  /** Asks for the whole curve. */
  begin(): void
  /** Looks at a stretch, null: at all; finer samples are asked for once the view stands still. */
  show(wanted: Span | null): void
  setBeside(load: LoadCurve | null): void
  end(): void
}

/** `onView` is told of another stretch or other samples, `onBeside` of other samples of the second curve. */
export function createViewedCurve(options: {
  load: LoadCurve
  maxPoints(): number
  onView(): void
  onBeside(): void
}): ViewedCurve {
  const { maxPoints, onView, onBeside } = options
  let whole: Span = { fromS: 0, toS: 1 }
  let span: Span = whole
  let beside: CurveStretches | null = null
  let waiting: ReturnType<typeof setTimeout> | undefined
  const curve = createCurveStretches({
    load: options.load,
    maxPoints,
    accepts: (answer) => answer !== null && answer.timeS.length > 0,
    firstIsWhole: true,
    onArrival(wanted) {
      whole = spanOf(curve.whole()!.timeS)
      if (wanted === null) span = whole
      onView()
    },
  })

  function showWhole(): void {
    // Before it has come, it is still on its way
    if (curve.whole() !== null) curve.showWhole()
    beside?.showWhole()
    if (beside !== null && beside.whole() === null) beside.fetch(null)
  }

  return {
    curve: curve.shown,
    beside: () => beside?.shown() ?? null,
    view: () => ({ span, whole, leastS: leastSpanS(whole, curve.whole()?.samples ?? 0) }),
    begin: () => curve.fetch(null),
    show(wanted) {
      span = wanted ?? whole
      clearTimeout(waiting)
      if (isWhole({ span, whole })) showWhole()
      else
        waiting = setTimeout(() => {
          curve.fetch(span)
          beside?.fetch(span)
        }, fetchDelayMs)
      onView()
    },
    setBeside(load) {
      beside?.end()
      beside =
        load === null
          ? null
          : createCurveStretches({ load, maxPoints, accepts: () => true, firstIsWhole: false, onArrival: onBeside })
      if (beside === null) onBeside()
      else beside.fetch(isWhole({ span, whole }) ? null : span)
    },
    end() {
      clearTimeout(waiting)
      curve.end()
      beside?.end()
    },
  }
}
