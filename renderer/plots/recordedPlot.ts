import uPlot from 'uplot'
import type { ForceCurve } from '#contract/records/break.ts'
import type { ForceDisplay } from './forceDisplay.ts'
import { onThemeChange, type PlotColours, readPlotColours } from './plotColours.ts'
import { drawLevels, drawMarks, type LevelLine, type PointMark } from './plotMarks.ts'
import { drawnSpan, pan, type Span, zoom } from './zoom.ts'

export type RecordedPlotOptions = {
  display: ForceDisplay
  /** Asks for the samples of a stretch, thinned to at most `maxPoints`. */
  load(span: Span | null, maxPoints: number): Promise<ForceCurve | null>
  /** The sample under the cursor in shown units, or null. */
  onCursor(sample: { timeS: number; shown: number } | null): void
  onSpan(span: Span, whole: Span): void
}

export type RecordedPlot = {
  setMarks(marks: readonly PointMark[], levels: readonly LevelLine[]): void
  setDisplay(display: ForceDisplay): void
  /** Acts on a key as the help says; true when it was one of the plot's keys. */
  key(name: string): boolean
  show(span: Span | null): void
  destroy(): void
}

/** A stored curve: drag to zoom, double click to see all, keys to zoom, pan and move the cursor; finer samples are asked for as one zooms in. */
export function createRecordedPlot(host: HTMLElement, options: RecordedPlotOptions): RecordedPlot {
  let { display } = options
  let colours: PlotColours = readPlotColours(host)
  let curve: ForceCurve | null = null
  let overview: ForceCurve | null = null
  let whole: Span = { fromS: 0, toS: 1 }
  let span: Span = whole
  let marks: readonly PointMark[] = []
  let levels: readonly LevelLine[] = []
  let cursorIndex: number | null = null
  let asked = 0

  const axis = (values: uPlot.Axis['values'], size: number, space: number): uPlot.Axis => ({
    stroke: () => colours.quiet,
    grid: { stroke: () => colours.grid, width: 1 },
    ticks: { show: false },
    font: colours.font,
    gap: 8,
    size,
    space,
    ...(values === undefined ? {} : { values }),
  })
  const plot = new uPlot(
    {
      width: Math.max(host.clientWidth, 100),
      height: Math.max(host.clientHeight, 100),
      legend: { show: false },
      padding: [14, 14, 0, 0],
      cursor: {
        drag: { x: true, y: false, setScale: false },
        points: { size: 9, width: 2, stroke: () => colours.marker, fill: () => colours.ground },
      },
      scales: { x: { time: false, auto: false }, y: { auto: false } },
      series: [{}, { stroke: () => colours.curve, width: 1.75, points: { show: false } }],
      axes: [
        axis((_plot, splits) => splits.map((split) => `${Number(split.toPrecision(9))} s`.replace('-', '−')), 34, 80),
        axis((_plot, splits) => splits.map((split) => display.format(split)), 70, 40),
      ],
      hooks: {
        draw: [
          () => {
            drawLevels(plot, scaled(levels), colours)
            drawMarks(plot, scaled(marks), colours)
          },
        ],
        setSelect: [
          () => {
            const { left, width } = plot.select
            if (width < 4) return
            const least = leastSpanS()
            show(drawnSpan(plot.posToVal(left, 'x'), plot.posToVal(left + width, 'x'), whole, least))
            plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false)
          },
        ],
        setCursor: [() => report(plot.cursor.idx ?? null)],
      },
    },
    [[], []],
    host,
  )
  plot.over.addEventListener('dblclick', () => show(null))

  const resizing = new ResizeObserver(() => {
    if (host.clientWidth > 0 && host.clientHeight > 0)
      plot.setSize({ width: host.clientWidth, height: host.clientHeight })
  })
  resizing.observe(host)
  const endThemeWatch = onThemeChange(() => {
    colours = readPlotColours(host)
    plot.redraw(false, true)
  })

  function scaled<T extends { value: number }>(items: readonly T[]): T[] {
    return items.map((item) => ({ ...item, value: item.value * display.factor }))
  }

  function leastSpanS(): number {
    const samples = overview?.samples ?? 0
    return samples > 1 ? Math.max((whole.toS - whole.fromS) / samples, 1e-6) * 8 : 1e-3
  }

  function report(index: number | null): void {
    cursorIndex = index
    const timeS = index === null ? undefined : curve?.timeS[index]
    const force = index === null ? undefined : curve?.force[index]
    options.onCursor(timeS === undefined || force === undefined ? null : { timeS, shown: force * display.factor })
  }

  function redraw(): void {
    if (curve === null) return
    const force = Float64Array.from(curve.force, (value) => value * display.factor)
    let highest = Number.NEGATIVE_INFINITY
    let lowest = 0
    for (let i = 0; i < force.length; i++) {
      if (force[i]! < lowest) lowest = force[i]!
      const inSight = curve.timeS[i]! >= span.fromS && curve.timeS[i]! <= span.toS
      if (inSight && force[i]! > highest) highest = force[i]!
    }
    const top = highest > 0 ? highest * 1.1 : 1
    plot.batch(() => {
      plot.setData([curve!.timeS, force], false)
      plot.setScale('x', { min: span.fromS, max: span.toS })
      plot.setScale('y', { min: Math.min(lowest * 1.05, -0.04 * top), max: top })
    })
  }

  async function fetchCurve(wanted: Span | null): Promise<void> {
    const turn = ++asked
    const points = Math.max(2 * Math.round(host.clientWidth * devicePixelRatio), 400)
    const answer = await options.load(wanted, points)
    if (answer === null || turn !== asked || answer.timeS.length === 0) return
    curve = answer
    if (wanted === null || overview === null) {
      overview = answer
      whole = { fromS: answer.timeS[0]!, toS: answer.timeS[answer.timeS.length - 1]! }
      if (wanted === null) span = whole
    }
    redraw()
    options.onSpan(span, whole)
  }

  function show(wanted: Span | null): void {
    if (wanted === null) {
      span = whole
      curve = overview
    } else span = wanted
    redraw()
    options.onSpan(span, whole)
    const isWhole = span.fromS <= whole.fromS && span.toS >= whole.toS
    if (!isWhole) void fetchCurve(span)
    else asked++
  }

  function moveCursor(steps: number): void {
    if (curve === null) return
    const middle = curve.timeS.findIndex((time) => time >= (span.fromS + span.toS) / 2)
    const index = Math.min(Math.max((cursorIndex ?? middle) + steps, 0), curve.timeS.length - 1)
    plot.setCursor(
      {
        left: plot.valToPos(curve.timeS[index]!, 'x'),
        top: plot.valToPos(curve.force[index]! * display.factor, 'y'),
      },
      true,
    )
  }

  void fetchCurve(null)

  return {
    setMarks(nextMarks, nextLevels) {
      marks = nextMarks
      levels = nextLevels
      plot.redraw(false, false)
    },
    setDisplay(next) {
      display = next
      redraw()
    },
    key(name) {
      const cursorS = cursorIndex === null ? undefined : curve?.timeS[cursorIndex]
      const inSight = cursorS !== undefined && cursorS >= span.fromS && cursorS <= span.toS
      const centre = inSight ? cursorS : (span.fromS + span.toS) / 2
      if (name === '+' || name === '=') show(zoom(span, 0.5, centre, whole, leastSpanS()))
      else if (name === '-') show(zoom(span, 2, centre, whole, leastSpanS()))
      else if (name === '0') show(null)
      else if (name === 'PageUp') show(pan(span, -0.5, whole))
      else if (name === 'PageDown') show(pan(span, 0.5, whole))
      else if (name === 'ArrowLeft') moveCursor(-1)
      else if (name === 'ArrowRight') moveCursor(1)
      else if (name === 'Home') moveCursor(Number.NEGATIVE_INFINITY)
      else if (name === 'End') moveCursor(Number.POSITIVE_INFINITY)
      else return false
      return true
    },
    show,
    destroy() {
      asked++
      endThemeWatch()
      resizing.disconnect()
      plot.destroy()
    },
  }
}
