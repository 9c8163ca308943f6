// Held by tests/browser/everyScreen.spec.ts.
import type uPlot from 'uplot'
import { readPlotColours } from '../plotColours.ts'
import { drawMarks } from '../recorded/plotMarks.ts'
import { drawUnit } from '../timeAxis.ts'
import type { Span } from '../zoom.ts'
import type { OverlayCurve, OverlayMedian } from './overlayCurve.ts'
import { overlayMarks } from './overlayMarks.ts'
import { type DrawnMedian, drawnMedian } from './overlayMedian.ts'
import type { OverlayDisplay } from './overlayOptions.ts'
import { createOverlayPainter } from './overlayPainter.ts'
import { type DrawnCurve, type FinerStretch, type FineStretch, finerStretches, withNewCurves } from './overlayView.ts'

/** A curve nearer than this to the pointer is pointed at. */
const reachPx = 12

/** What lies over each other: the curves with their finer stretches, the median, and the one that stands out. */
export type OverlayScene = {
  curves(): readonly DrawnCurve[]
  /** The curve that stands out, and the median, as the cursor reads them. */
  toRead(): { curve: OverlayCurve | null; median: OverlayMedian | null }
  colours(): ReturnType<typeof readPlotColours>
  /** Puts other curves in place; true when one of those that stay lies elsewhere now. */
  setCurves(curves: readonly OverlayCurve[]): boolean
  setMedian(median: OverlayMedian | null): void
  /** False when that curve stands out already. */
  setEmphasis(key: number | null): boolean
  setFine(key: number, fine: FineStretch): void
  /** The picture is painted anew at the next drawing. */
  forget(): void
  takeTheme(): void
  /** Paints curves, median and marks over what the plot library drew. */
  paint(plot: uPlot, shown: OverlayDisplay): void
  /** The curve at a place of the plot, px. */
  nearest(left: number, top: number): number | null
  /** What is stored beyond what is drawn, in a view so many pixels wide. */
  finer(span: Span, columns: number): FinerStretch[]
}

/** An empty scene that takes its colours from the theme of `host`. */
export function createOverlayScene(host: HTMLElement): OverlayScene {
  let colours = readPlotColours(host)
  let curves: readonly DrawnCurve[] = []
  let median: OverlayMedian | null = null
  let medianLines: DrawnMedian | null = null
  let emphasis: number | null = null
  const painter = createOverlayPainter(host)
  return {
    curves: () => curves,
    toRead: () => ({ curve: curves.find(({ curve }) => curve.key === emphasis)?.curve ?? null, median }),
    colours: () => colours,
    setCurves(next) {
      const { drawn, lieElsewhere } = withNewCurves(curves, next)
      curves = drawn
      return lieElsewhere
    },
    setMedian(next) {
      median = next
      medianLines = next === null ? null : drawnMedian(next)
    },
    setEmphasis(key) {
      if (key === emphasis) return false
      emphasis = key
      return true
    },
    setFine(key, fine) {
      curves = curves.map((drawn) => (drawn.curve.key === key ? { ...drawn, fine } : drawn))
    },
    forget: painter.forget,
    takeTheme() {
      colours = readPlotColours(host)
      painter.forgetInk()
    },
    paint(plot, { display, axisUnit }) {
      drawUnit(plot, axisUnit, colours)
      const { min: bottom, max: top } = plot.scales.y ?? {}
      const { min: fromS, max: toS } = plot.scales.x ?? {}
      if (bottom == null || top == null || fromS == null || toS == null || curves.length === 0) return
      const view = { span: { fromS, toS }, bottom, top, factor: display.factor }
      const painted = painter.draw(plot, { curves, median: medianLines, emphasis }, view)
      const all = curves.map(({ curve }) => curve)
      drawMarks(plot, overlayMarks(all, emphasis, view, painted), colours)
    },
    nearest: (left, top) => painter.nearest(left, top, reachPx),
    finer: (span, columns) => finerStretches(curves, span, columns),
  }
}
