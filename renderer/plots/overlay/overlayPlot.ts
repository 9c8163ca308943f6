import uPlot from 'uplot'
import type { ForceDisplay } from '../forceDisplay.ts'
import { onThemeChange, type PlotColours, readPlotColours } from '../plotColours.ts'
import { drawMarks } from '../recorded/plotMarks.ts'
import { drawUnit, lastTimeRoom, themedAxis, valueAxisSize } from '../timeAxis.ts'
import { drawnSpan, pan, type Span, zoom } from '../zoom.ts'
import { liesElsewhere, type OverlayCurve, type OverlayMedian } from './overlayCurve.ts'
import { listenToPlot } from './overlayInput.ts'
import { overlayMarks } from './overlayMarks.ts'
import { type DrawnMedian, drawnMedian } from './overlayMedian.ts'
import { createOverlayPainter } from './overlayPainter.ts'
import { type OverlayReading, readingAt } from './overlayReading.ts'
import {
  type DrawnCurve,
  type FinerStretch,
  type FineStretch,
  finerStretches,
  narrowestSpan,
  rangeInView,
  wholeSpan,
} from './overlayView.ts'

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

/** How long the view must have been at rest before finer samples are asked for, ms. */
const restMs = 250
const reachPx = 12

/**
 * Many curves in one plot. Axes, cursor and the drawn rectangle are the plot library's; the curves are painted by us as pixels
 * from their levels, so that a frame costs the same however many samples they have.
 */
export function createOverlayPlot(host: HTMLElement, options: OverlayPlotOptions): OverlayPlot {
  let colours: PlotColours = readPlotColours(host)
  let display: ForceDisplay = { factor: 1, unit: 'N', format: String }
  let axisUnit = 'N'
  let timeUnit = 's'
  let curves: readonly DrawnCurve[] = []
  let median: OverlayMedian | null = null
  let medianLines: DrawnMedian | null = null
  let emphasis: number | null = null
  let whole: Span = { fromS: 0, toS: 1 }
  let span: Span = whole
  /** Chosen by drawing a rectangle; null: what is in view fits. */
  let chosenRange: { bottom: number; top: number } | null = null
  let cursorAt: number | null = null
  let requested = 0
  let restTimer: ReturnType<typeof setTimeout> | undefined
  const painter = createOverlayPainter(host)

  const plot = new uPlot(
    {
      width: Math.max(host.clientWidth, 100),
      height: Math.max(host.clientHeight, 100),
      legend: { show: false },
      padding: [24, lastTimeRoom, 0, 0],
      cursor: { drag: { x: true, y: true, uni: 24, setScale: false }, points: { show: false }, y: false },
      scales: { x: { time: false, auto: false }, y: { auto: false } },
      series: [{}, { show: false }],
      axes: [
        themedAxis(
          () => colours,
          (splits) => splits.map((split) => `${written(split)} ${timeUnit}`),
          34,
          80,
        ),
        themedAxis(
          () => colours,
          (splits) => splits.map((split) => display.format(split)),
          valueAxisSize,
          40,
        ),
      ],
      hooks: { draw: [drawAll], setSelect: [takeSelection], setCursor: [() => report()] },
    },
    [
      [0, 1],
      [null, null],
    ],
    host,
  )
  const endInput = listenToPlot(plot.over, {
    zoomAbout: (factor, left) => show(zoom(span, factor, plot.posToVal(left, 'x'), whole, least())),
    panBy: (pixels) => show(pan(span, -pixels / plot.over.clientWidth, whole)),
    showAll: () => show(null),
    click: (left, top) => {
      const key = nearest(left, top)
      if (key !== null) options.onChoose(key)
    },
    leave: () => options.onPoint(null),
  })

  const resizing = new ResizeObserver(() => {
    if (host.clientWidth > 0 && host.clientHeight > 0)
      plot.setSize({ width: host.clientWidth, height: host.clientHeight })
  })
  resizing.observe(host)
  const endThemeWatch = onThemeChange(() => {
    colours = readPlotColours(host)
    painter.forgetInk()
    plot.redraw(false, true)
  })

  function least(): number {
    return narrowestSpan(curves.map(({ curve }) => curve))
  }

  /** All that changes the picture goes through here: one drawing a frame, however many events there were. */
  function request(repaint: boolean): void {
    if (repaint) painter.forget()
    if (requested === 0) requested = requestAnimationFrame(draw)
  }

  function draw(): void {
    requested = 0
    const { bottom, top } = chosenRange ?? fittingRange()
    plot.batch(() => {
      plot.setScale('x', { min: span.fromS, max: span.toS })
      plot.setScale('y', { min: bottom, max: top })
    })
    // Scales that stay as they are draw nothing.
    plot.redraw(false, false)
  }

  function fittingRange(): { bottom: number; top: number } {
    const { low, high } = rangeInView(curves, span, display.factor)
    const top = high > 0 ? high * 1.1 : 1
    return { bottom: Math.min(low * 1.05, -0.03 * top), top }
  }

  function drawAll(): void {
    drawUnit(plot, axisUnit, colours)
    const { min: bottom, max: top } = plot.scales.y ?? {}
    const { min: fromS, max: toS } = plot.scales.x ?? {}
    if (bottom == null || top == null || fromS == null || toS == null || curves.length === 0) return
    const view = { span: { fromS, toS }, bottom, top, factor: display.factor }
    const painted = painter.draw(plot, { curves, median: medianLines, emphasis }, view)
    const marks = overlayMarks(
      curves.map(({ curve }) => curve),
      emphasis,
      view,
      painted,
    )
    drawMarks(plot, marks, colours)
  }

  function takeSelection(): void {
    const { left, top, width, height } = plot.select
    if (width < 4) return
    const over = plot.over
    const wholeHeight = height >= over.clientHeight - 1
    if (!wholeHeight) chosenRange = { bottom: plot.posToVal(top + height, 'y'), top: plot.posToVal(top, 'y') }
    show(drawnSpan(plot.posToVal(left, 'x'), plot.posToVal(left + width, 'x'), whole, least()))
    plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false)
  }

  function show(wanted: Span | null): void {
    span = wanted ?? whole
    if (wanted === null) chosenRange = null
    options.onSpan(span, whole)
    request(false)
    clearTimeout(restTimer)
    restTimer = setTimeout(askFiner, restMs)
  }

  function askFiner(): void {
    const stretches = finerStretches(curves, span, plot.bbox.width)
    if (stretches.length > 0) options.onFiner(stretches)
  }

  function nearest(left: number, top: number): number | null {
    return painter.nearest(left, top, reachPx)
  }

  function report(): void {
    const { left, top } = plot.cursor
    if (left == null || left < 0) {
      cursorAt = null
      options.onCursor(null)
      return
    }
    cursorAt = plot.posToVal(left, 'x')
    if (top != null && top >= 0) options.onPoint(nearest(left, top))
    reportReading()
  }

  function reportReading(): void {
    if (cursorAt === null) return
    const drawn = curves.find(({ curve }) => curve.key === emphasis)
    options.onCursor(readingAt(drawn?.curve ?? null, median, cursorAt))
  }

  function moveCursor(to: number): void {
    const at = Math.min(Math.max(to, span.fromS), span.toS)
    // Above the plot, so that the pointer's curve is not taken for the one under the cursor.
    plot.setCursor({ left: plot.valToPos(at, 'x'), top: -1 }, true)
  }

  return {
    setCurves(next) {
      const wasWhole = span.fromS <= whole.fromS && span.toS >= whole.toS
      const before = new Map(curves.map((drawn) => [drawn.curve.key, drawn]))
      const lieElsewhere = next.some((curve) => {
        const known = before.get(curve.key)
        return known !== undefined && liesElsewhere(curve, known.curve)
      })
      curves = next.map((curve) => {
        const known = before.get(curve.key)
        return { curve, fine: known?.curve.levels === curve.levels ? known.fine : null }
      })
      whole = wholeSpan(next)
      if (lieElsewhere) chosenRange = null
      if (wasWhole || lieElsewhere || span.toS <= whole.fromS || span.fromS >= whole.toS) span = whole
      options.onSpan(span, whole)
      request(true)
    },
    setMedian(next) {
      median = next
      medianLines = next === null ? null : drawnMedian(next)
      request(true)
    },
    setDisplay(next, nextAxisUnit, nextTimeUnit) {
      display = next
      axisUnit = nextAxisUnit
      timeUnit = nextTimeUnit
      chosenRange = null
      request(true)
    },
    setEmphasis(key) {
      if (key === emphasis) return
      emphasis = key
      request(false)
      reportReading()
    },
    setFine(key, fine) {
      curves = curves.map((drawn) => (drawn.curve.key === key ? { ...drawn, fine } : drawn))
      request(true)
    },
    key(name) {
      const inSight = cursorAt !== null && cursorAt >= span.fromS && cursorAt <= span.toS
      const centre = inSight ? cursorAt! : (span.fromS + span.toS) / 2
      const step = (span.toS - span.fromS) / 200
      if (name === '+' || name === '=') show(zoom(span, 0.5, centre, whole, least()))
      else if (name === '-') show(zoom(span, 2, centre, whole, least()))
      else if (name === '0') show(null)
      else if (name === 'PageUp') show(pan(span, -0.5, whole))
      else if (name === 'PageDown') show(pan(span, 0.5, whole))
      else if (name === 'ArrowLeft') moveCursor(inSight ? centre - step : centre)
      else if (name === 'ArrowRight') moveCursor(inSight ? centre + step : centre)
      else if (name === 'Home') moveCursor(span.fromS)
      else if (name === 'End') moveCursor(span.toS)
      else return false
      return true
    },
    show,
    destroy() {
      cancelAnimationFrame(requested)
      clearTimeout(restTimer)
      endInput()
      endThemeWatch()
      resizing.disconnect()
      plot.destroy()
    },
  }
}

function written(split: number): string {
  return String(Number(split.toPrecision(9))).replace('-', '−')
}
