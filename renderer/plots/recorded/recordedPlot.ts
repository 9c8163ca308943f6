// Held by tests/browser/breaks/curveReview.spec.ts.
import uPlot from 'uplot'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { nearestIndex } from '#domain/numbers/risingSearch.ts'
import { fitToHost } from '../fitToHost.ts'
import type { ForceDisplay } from '../forceDisplay.ts'
import { onThemeChange, type PlotColours, readPlotColours } from '../plotColours.ts'
import { drawUnit } from '../timeAxis.ts'
import { spanAfterKey } from '../viewKeys.ts'
import { drawnSpan, type Span, spanAbout } from '../zoom.ts'
import { type CursorSample, createCurveCursor, cursorSteps, type KeptSample } from './curveCursor.ts'
import {
  type CurveScene,
  drawBand,
  drawBeside,
  drawSpans,
  drawStraightLine,
  emptyScene,
  scaledScene,
} from './curveScene.ts'
import type { LoadCurve } from './curveStretches.ts'
import { drawKept, drawLevels, drawMarks } from './plotMarks.ts'
import { listenToClicks, listenToGestures } from './recordedGestures.ts'
import { recordedOptions } from './recordedOptions.ts'
import { shownForces } from './recordedView.ts'
import { createViewedCurve, type ViewedCurve } from './viewedCurve.ts'

export type RecordedPlotOptions = {
  display: ForceDisplay
  load: LoadCurve
  onCursor(sample: CursorSample | null): void
  onSpan(span: Span, whole: Span): void
}

export type RecordedPlot = {
  setScene(scene: CurveScene): void
  setDisplay(display: ForceDisplay): void
  /** A second curve, drawn in dashes beside the first; null: none. */
  setBeside(load: LoadCurve | null): void
  /** Acts on a key as the help says; true when it was one of the plot's keys. */
  key(name: string, fast: boolean): boolean
  show(span: Span | null): void
  /** Shows a stretch with what lies on both sides of it. */
  showAbout(stretch: Span): void
  /** Puts the cursor on the sample nearest to a time. */
  cursorTo(timeS: number): void
  destroy(): void
}

/**
 * A stored curve: drag to zoom, Shift and drag to move along, wheel, click to keep a sample, double click to see all, keys to
 * zoom, pan and move the cursor, Escape to let the sample go; finer samples are asked for as one zooms in.
 */
export function createRecordedPlot(host: HTMLElement, options: RecordedPlotOptions): RecordedPlot {
  let { display } = options
  let colours: PlotColours = readPlotColours(host)
  let scene = emptyScene
  const viewed = createViewedCurve({
    load: options.load,
    maxPoints: () => Math.max(2 * Math.round(host.clientWidth * devicePixelRatio), 400),
    onView() {
      redraw()
      const { span, whole } = viewed.view()
      options.onSpan(span, whole)
    },
    onBeside: () => redrawOver(false),
  })
  const plot: uPlot = new uPlot(
    recordedOptions(
      host,
      { colours: () => colours, display: () => display, gaps: () => scene.gaps },
      {
        drawClear: [() => drawSpans(plot, scene.spans, colours)],
        draw: [() => drawOver(plot, scene, { beside: viewed.beside(), kept: cursor.kept(), display, colours })],
        setSelect: [() => takeSelection(plot, viewed)],
        setCursor: [() => cursor.standAt(plot.cursor.idx ?? null)],
      },
    ),
    [[], []],
    host,
  )
  const cursor = createCurveCursor(plot, { ...viewed, factor: () => display.factor }, options.onCursor)
  const keep = (index: number | null) => {
    cursor.keep(index)
    redrawOver(false)
  }
  plot.over.addEventListener('dblclick', () => viewed.show(null))
  const ends = [
    listenToGestures(plot, { view: viewed.view, show: viewed.show }),
    listenToClicks(plot, (leftPx) => {
      if (viewed.curve() !== null) keep(plot.posToIdx(leftPx))
    }),
    fitToHost(plot, host),
    onThemeChange(() => {
      colours = readPlotColours(host)
      plot.redraw(false, true)
    }),
  ]

  function redraw(): void {
    const curve = viewed.curve()
    if (curve !== null) showSamples(plot, curve, display.factor, viewed.view())
  }

  /** What lies over and under the line; `withLine`: the line itself as well. */
  function redrawOver(withLine: boolean): void {
    if (viewed.curve() !== null) plot.redraw(withLine, false)
  }

  viewed.begin()

  return {
    setScene(next) {
      scene = next
      // It ends where samples are missing
      redrawOver(true)
    },
    setDisplay(next) {
      display = next
      redraw()
    },
    setBeside: viewed.setBeside,
    key(name, fast) {
      const view = viewed.view()
      const steps = cursorSteps(name, fast)
      if (name === 'Escape' && cursor.kept() !== null) keep(null)
      else if (steps !== null) {
        cursor.move(steps, view.span)
        redrawOver(false)
      } else {
        const wanted = spanAfterKey(name, { ...view, cursorS: cursor.timeS() })
        if (wanted === null) return false
        viewed.show(wanted)
      }
      return true
    },
    show: viewed.show,
    showAbout(stretch) {
      const { whole, leastS } = viewed.view()
      viewed.show(spanAbout(stretch, whole, 4 * leastS))
    },
    cursorTo(timeS) {
      const curve = viewed.curve()
      if (curve !== null) cursor.put(nearestIndex(curve.timeS, timeS))
    },
    destroy() {
      viewed.end()
      for (const end of ends) end()
      plot.destroy()
    },
  }
}

/** Draws over the line what an evaluation says of it, and the second curve. */
function drawOver(
  plot: uPlot,
  scene: CurveScene,
  {
    beside,
    kept,
    display,
    colours,
  }: { beside: ForceCurve | null; kept: KeptSample | null; display: ForceDisplay; colours: PlotColours },
): void {
  const shown = scaledScene(scene, display.factor)
  const named = drawBand(plot, shown.band, colours)
  drawBeside(plot, beside, display.factor, colours)
  drawStraightLine(plot, shown.line, colours)
  drawLevels(plot, shown.levels, colours)
  drawMarks(plot, shown.marks, colours, named)
  if (kept !== null) drawKept(plot, kept.timeS, kept.force * display.factor, colours)
  drawUnit(plot, display.unit, colours)
}

/** Looks at the stretch that was drawn. */
function takeSelection(plot: uPlot, viewed: ViewedCurve): void {
  const { left, width } = plot.select
  if (width < 4) return
  const { whole, leastS } = viewed.view()
  viewed.show(drawnSpan(plot.posToVal(left, 'x'), plot.posToVal(left + width, 'x'), whole, leastS))
  plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false)
}

function showSamples(plot: uPlot, curve: ForceCurve, factor: number, view: ReturnType<ViewedCurve['view']>): void {
  const { force, range } = shownForces(curve, factor, view)
  plot.batch(() => {
    plot.setData([curve.timeS, force], false)
    plot.setScale('x', { min: view.span.fromS, max: view.span.toS })
    plot.setScale('y', range)
  })
}
