// Held by tests/browser/breaks/compareRun.spec.ts.
import uPlot from 'uplot'
import { fitToHost } from '../fitToHost.ts'
import type { ForceDisplay } from '../forceDisplay.ts'
import { onThemeChange } from '../plotColours.ts'
import { spanAfterKey } from '../viewKeys.ts'
import { drawnSpan, pan, type Span, zoom } from '../zoom.ts'
import { createOverlayCursor } from './overlayCursor.ts'
import type { OverlayCurve, OverlayMedian } from './overlayCurve.ts'
import { listenToPlot, type PlotInput } from './overlayInput.ts'
import { type OverlayDisplay, overlayOptions } from './overlayOptions.ts'
import type { OverlayReading } from './overlayReading.ts'
import { createOverlayScene, type OverlayScene } from './overlayScene.ts'
import { createOverlayStretch, type OverlayStretch } from './overlayStretch.ts'
import type { FinerStretch, FineStretch } from './overlayView.ts'

export type OverlayPlotOptions = {
  /** Where the read-out stands on the time axis, and what the median has there in stored units. */
  onCursor(reading: OverlayReading | null): void
  /** The curve under the pointer. */
  onPoint(key: number | null): void
  /** The curve that was clicked. */
  onChoose(key: number): void
  onSpan(span: Span, whole: Span): void
  /** Asked when the view has come to rest and shows less than is stored: answered by `setFine`. */
  onFiner(stretches: readonly FinerStretch[]): void
}

export type OverlayPlot = {
  setCurves(curves: readonly OverlayCurve[]): void
  setMedian(median: OverlayMedian | null): void
  /** `axisUnit`: what the numbers on the upright axis are. */
  setDisplay(display: ForceDisplay, axisUnit: string, timeUnit: string): void
  /** The curve to stand out and be named. */
  setEmphasis(key: number | null): void
  setFine(key: number, fine: FineStretch): void
  /** Acts on a key as the help says; true when it was one of the plot's keys. */
  key(name: string): boolean
  show(span: Span | null): void
  destroy(): void
}

/**
 * Many curves in one plot. Axes, cursor and the drawn rectangle are the plot library's; the curves are painted by us as pixels
 * from their levels, so that a frame costs the same however many samples they have.
 */
export function createOverlayPlot(host: HTMLElement, options: OverlayPlotOptions): OverlayPlot {
  let shown: OverlayDisplay = { display: { factor: 1, unit: 'N', format: String }, axisUnit: 'N', timeUnit: 's' }
  let requested = 0
  const scene = createOverlayScene(host)
  const stretch = createOverlayStretch({
    onSpan: options.onSpan,
    onMove: () => request(false),
    onRest() {
      const stretches = scene.finer(stretch.view().span, plot.bbox.width)
      if (stretches.length > 0) options.onFiner(stretches)
    },
  })
  const plot: uPlot = new uPlot(
    overlayOptions(
      host,
      { colours: scene.colours, shown: () => shown },
      {
        draw: [() => scene.paint(plot, shown)],
        setSelect: [() => takeSelection(plot, stretch)],
        setCursor: [() => cursor.report()],
      },
    ),
    [
      [0, 1],
      [null, null],
    ],
    host,
  )
  const cursor = createOverlayCursor(plot, { read: scene.toRead, nearest: scene.nearest, ...options })
  const ends = [
    listenToPlot(plot.over, inputTo(plot, scene, stretch, options)),
    fitToHost(plot, host),
    onThemeChange(() => {
      scene.takeTheme()
      plot.redraw(false, true)
    }),
  ]

  /** All that changes the picture goes through here: one drawing a frame, however many events there were. */
  function request(repaint: boolean): void {
    if (repaint) scene.forget()
    if (requested === 0) requested = requestAnimationFrame(draw)
  }

  function draw(): void {
    requested = 0
    const { span } = stretch.view()
    const { bottom, top } = stretch.range(scene.curves(), shown.display.factor)
    plot.batch(() => {
      plot.setScale('x', { min: span.fromS, max: span.toS })
      plot.setScale('y', { min: bottom, max: top })
    })
    // Scales that stay as they are draw nothing.
    plot.redraw(false, false)
  }

  return {
    setCurves(next) {
      stretch.setCurves(next, scene.setCurves(next))
      request(true)
    },
    setMedian(next) {
      scene.setMedian(next)
      request(true)
    },
    setDisplay(display, axisUnit, timeUnit) {
      shown = { display, axisUnit, timeUnit }
      stretch.chooseRange(null)
      request(true)
    },
    setEmphasis(key) {
      if (!scene.setEmphasis(key)) return
      request(false)
      cursor.read()
    },
    setFine(key, fine) {
      scene.setFine(key, fine)
      request(true)
    },
    key(name) {
      const view = { ...stretch.view(), cursorS: cursor.at() }
      if (cursor.key(name, view)) return true
      const wanted = spanAfterKey(name, view)
      if (wanted === null) return false
      // All of it, in height as well
      stretch.show(name === '0' ? null : wanted)
      return true
    },
    show: stretch.show,
    destroy() {
      cancelAnimationFrame(requested)
      stretch.end()
      for (const end of ends) end()
      plot.destroy()
    },
  }
}

/** What wheel and pointer do to the view. */
function inputTo(
  plot: uPlot,
  scene: OverlayScene,
  stretch: OverlayStretch,
  { onChoose, onPoint }: OverlayPlotOptions,
): PlotInput {
  return {
    zoomAbout(factor, left) {
      const { span, whole, leastS } = stretch.view()
      stretch.show(zoom(span, factor, plot.posToVal(left, 'x'), whole, leastS))
    },
    panBy(pixels) {
      const { span, whole } = stretch.view()
      stretch.show(pan(span, -pixels / plot.over.clientWidth, whole))
    },
    showAll: () => stretch.show(null),
    click(left, top) {
      const key = scene.nearest(left, top)
      if (key !== null) onChoose(key)
    },
    leave: () => onPoint(null),
  }
}

/** Looks at what the drawn rectangle holds. */
function takeSelection(plot: uPlot, stretch: OverlayStretch): void {
  const { left, top, width, height } = plot.select
  if (width < 4) return
  if (height < plot.over.clientHeight - 1)
    stretch.chooseRange({ bottom: plot.posToVal(top + height, 'y'), top: plot.posToVal(top, 'y') })
  const { whole, leastS } = stretch.view()
  stretch.show(drawnSpan(plot.posToVal(left, 'x'), plot.posToVal(left + width, 'x'), whole, leastS))
  plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false)
}
