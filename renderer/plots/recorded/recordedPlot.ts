import uPlot from 'uplot'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { nearestIndex } from '#domain/numbers/risingSearch.ts'
import { fitToHost } from '../fitToHost.ts'
import type { ForceDisplay } from '../forceDisplay.ts'
import { onThemeChange, type PlotColours, readPlotColours } from '../plotColours.ts'
import { drawUnit, lastTimeRoom, secondsOf, themedAxis, valueAxisSize } from '../timeAxis.ts'
import { drawnSpan, pan, type Span, spanAbout, valueRange, zoom } from '../zoom.ts'
import {
  type CurveScene,
  drawBand,
  drawBeside,
  drawSpans,
  drawStraightLine,
  emptyScene,
  scaledScene,
} from './curveScene.ts'
import { drawLevels, drawMarks } from './plotMarks.ts'
import { listenToDragging, listenToWheel, movesAlong } from './recordedGestures.ts'

/** Asks for the samples of a stretch, thinned to at most `maxPoints`; null: all of it. Answers null when it cannot be had. */
export type LoadCurve = (span: Span | null, maxPoints: number) => Promise<ForceCurve | null>

/** The sample under the cursor, in shown units; `beside`: of the second curve there. */
export type CursorSample = { timeS: number; shown: number; beside: number | null }

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

/** A turning wheel moves the view many times before finer samples are worth asking for. */
const fetchDelayMs = 60
/** Samples that lie this far apart are shown as dots as well, so that each of them can be told. */
const dotsFromPx = 12

/**
 * A stored curve: drag to zoom, Shift and drag to move along, wheel, double click to see all, keys to zoom, pan and move the
 * cursor; finer samples are asked for as one zooms in.
 */
export function createRecordedPlot(host: HTMLElement, options: RecordedPlotOptions): RecordedPlot {
  let { display } = options
  let colours: PlotColours = readPlotColours(host)
  let curve: ForceCurve | null = null
  let overview: ForceCurve | null = null
  let loadBeside: LoadCurve | null = null
  let beside: ForceCurve | null = null
  let besideOverview: ForceCurve | null = null
  let whole: Span = { fromS: 0, toS: 1 }
  let span: Span = whole
  let scene = emptyScene
  let cursorIndex: number | null = null
  let asked = 0
  let askedBeside = 0
  let fetching: ReturnType<typeof setTimeout> | undefined

  const gestures = { span: () => span, whole: () => whole, leastS: leastSpanS, show: (to: Span) => show(to) }
  const plot = new uPlot(
    {
      width: Math.max(host.clientWidth, 100),
      height: Math.max(host.clientHeight, 100),
      legend: { show: false },
      padding: [24, lastTimeRoom, 0, 0],
      cursor: {
        drag: { x: true, y: false, setScale: false },
        points: { size: 9, width: 2, stroke: () => colours.marker, fill: () => colours.ground },
        bind: {
          mousedown: (_plot, _target, handler) => (event) => (movesAlong(event) ? null : handler(event)),
        },
      },
      scales: { x: { time: false, auto: false }, y: { auto: false } },
      series: [
        {},
        {
          stroke: () => colours.curve,
          width: 1.75,
          points: { show: (_plot, _series, from, to) => (to - from) * dotsFromPx <= host.clientWidth, size: 4 },
          gaps: (drawn): uPlot.Series.Gaps =>
            scene.gaps.map(({ fromS, toS }) => [drawn.valToPos(fromS, 'x', true), drawn.valToPos(toS, 'x', true)]),
        },
      ],
      axes: [
        themedAxis(() => colours, secondsOf, 34, 80),
        themedAxis(
          () => colours,
          (splits) => splits.map((split) => display.format(split)),
          valueAxisSize,
          40,
        ),
      ],
      hooks: {
        drawClear: [() => drawSpans(plot, scene.spans, colours)],
        draw: [draw],
        setSelect: [takeSelection],
        setCursor: [() => report(plot.cursor.idx ?? null)],
      },
    },
    [[], []],
    host,
  )
  const endWheel = listenToWheel(plot, gestures)
  const endDragging = listenToDragging(plot, gestures)
  plot.over.addEventListener('dblclick', () => show(null))

  const endFitting = fitToHost(plot, host)
  const endThemeWatch = onThemeChange(() => {
    colours = readPlotColours(host)
    plot.redraw(false, true)
  })

  function draw(): void {
    const shown = scaledScene(scene, display.factor)
    drawBand(plot, shown.band, colours)
    drawBeside(plot, beside, display.factor, colours)
    drawStraightLine(plot, shown.line, colours)
    drawLevels(plot, shown.levels, colours)
    drawMarks(plot, shown.marks, colours)
    drawUnit(plot, display.unit, colours)
  }

  function takeSelection(): void {
    const { left, width } = plot.select
    if (width < 4) return
    show(drawnSpan(plot.posToVal(left, 'x'), plot.posToVal(left + width, 'x'), whole, leastSpanS()))
    plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false)
  }

  function leastSpanS(): number {
    const samples = overview?.samples ?? 0
    return samples > 1 ? Math.max((whole.toS - whole.fromS) / samples, 1e-6) * 8 : 1e-3
  }

  function isWhole(): boolean {
    return span.fromS <= whole.fromS && span.toS >= whole.toS
  }

  function report(index: number | null): void {
    cursorIndex = index
    const timeS = index === null ? undefined : curve?.timeS[index]
    const force = index === null ? undefined : curve?.force[index]
    if (timeS === undefined || force === undefined) {
      options.onCursor(null)
      return
    }
    const there = beside === null ? undefined : beside.force[nearestIndex(beside.timeS, timeS)]
    const { factor } = display
    options.onCursor({ timeS, shown: force * factor, beside: there === undefined ? null : there * factor })
  }

  function redraw(): void {
    if (curve === null) return
    const force = Float64Array.from(curve.force, (value) => value * display.factor)
    let highest = Number.NEGATIVE_INFINITY
    let lowest = Number.POSITIVE_INFINITY
    for (let i = 0; i < force.length; i++) {
      if (curve.timeS[i]! < span.fromS || curve.timeS[i]! > span.toS) continue
      lowest = Math.min(lowest, force[i]!)
      highest = Math.max(highest, force[i]!)
    }
    plot.batch(() => {
      plot.setData([curve!.timeS, force], false)
      plot.setScale('x', { min: span.fromS, max: span.toS })
      plot.setScale('y', valueRange(lowest, highest, isWhole()))
    })
  }

  const points = () => Math.max(2 * Math.round(host.clientWidth * devicePixelRatio), 400)

  async function fetchCurve(wanted: Span | null): Promise<void> {
    const turn = ++asked
    const answer = await options.load(wanted, points())
    if (answer === null || turn !== asked || answer.timeS.length === 0) return
    curve = answer
    if (wanted === null || overview === null) {
      overview = answer
      whole = spanOf(answer.timeS)
      if (wanted === null) span = whole
    }
    redraw()
    options.onSpan(span, whole)
  }

  async function fetchBeside(wanted: Span | null): Promise<void> {
    const turn = ++askedBeside
    if (loadBeside === null) return
    const answer = await loadBeside(wanted, points())
    if (turn !== askedBeside) return
    beside = answer
    if (wanted === null) besideOverview = answer
    if (curve !== null) plot.redraw(false, false)
  }

  function show(wanted: Span | null): void {
    span = wanted ?? whole
    clearTimeout(fetching)
    if (isWhole()) {
      asked++
      askedBeside++
      curve = overview
      beside = besideOverview
      if (loadBeside !== null && besideOverview === null) void fetchBeside(null)
    } else
      fetching = setTimeout(() => {
        void fetchCurve(span)
        void fetchBeside(span)
      }, fetchDelayMs)
    redraw()
    options.onSpan(span, whole)
  }

  function putCursor(index: number): void {
    if (curve === null || curve.timeS.length === 0) return
    const to = Math.min(Math.max(index, 0), curve.timeS.length - 1)
    const left = plot.valToPos(curve.timeS[to]!, 'x')
    plot.setCursor({ left, top: plot.valToPos(curve.force[to]! * display.factor, 'y') }, true)
  }

  function moveCursor(steps: number): void {
    if (curve === null) return
    const { timeS } = curve
    const middle = nearestIndex(timeS, (span.fromS + span.toS) / 2)
    const at = cursorIndex !== null && (timeS[cursorIndex] ?? Number.NaN) >= span.fromS ? cursorIndex : middle
    putCursor(at + steps)
  }

  void fetchCurve(null)

  return {
    setScene(next) {
      scene = next
      // The line itself is drawn anew: it ends where samples are missing
      if (curve !== null) plot.redraw(true, false)
    },
    setDisplay(next) {
      display = next
      redraw()
    },
    setBeside(load) {
      loadBeside = load
      beside = null
      besideOverview = null
      askedBeside++
      if (load !== null) void fetchBeside(isWhole() ? null : span)
      else if (curve !== null) plot.redraw(false, false)
    },
    key(name, fast) {
      const cursorS = cursorIndex === null ? undefined : curve?.timeS[cursorIndex]
      const inSight = cursorS !== undefined && cursorS >= span.fromS && cursorS <= span.toS
      const centre = inSight ? cursorS : (span.fromS + span.toS) / 2
      const steps = fast ? 10 : 1
      if (name === '+' || name === '=') show(zoom(span, 0.5, centre, whole, leastSpanS()))
      else if (name === '-') show(zoom(span, 2, centre, whole, leastSpanS()))
      else if (name === '0') show(null)
      else if (name === 'PageUp') show(pan(span, -0.5, whole))
      else if (name === 'PageDown') show(pan(span, 0.5, whole))
      else if (name === 'ArrowLeft') moveCursor(-steps)
      else if (name === 'ArrowRight') moveCursor(steps)
      else if (name === 'Home') moveCursor(Number.NEGATIVE_INFINITY)
      else if (name === 'End') moveCursor(Number.POSITIVE_INFINITY)
      else return false
      return true
    },
    show,
    showAbout(stretch) {
      show(spanAbout(stretch, whole, 4 * leastSpanS()))
    },
    cursorTo(timeS) {
      if (curve !== null) putCursor(nearestIndex(curve.timeS, timeS))
    },
    destroy() {
      asked++
      askedBeside++
      clearTimeout(fetching)
      endThemeWatch()
      endWheel()
      endDragging()
      endFitting()
      plot.destroy()
    },
  }
}

/** From the first sample to the last; about a lone one. */
function spanOf(timeS: Float64Array): Span {
  const fromS = timeS[0]!
  const toS = timeS[timeS.length - 1]!
  return toS > fromS ? { fromS, toS } : { fromS: fromS - 0.5, toS: fromS + 0.5 }
}
