import uPlot from 'uplot'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import { nearestIndex } from '#domain/numbers/risingSearch.ts'
import { fitToHost } from '../fitToHost.ts'
import type { ForceDisplay } from '../forceDisplay.ts'
import { onThemeChange, type PlotColours, readPlotColours } from '../plotColours.ts'
import { lastTimeRoom, secondsOf, themedAxis, valueAxisSize } from '../timeAxis.ts'
import { type Span, valueRange } from '../zoom.ts'
import { listenToWheel } from './recordedGestures.ts'

export type SlopePlot = {
  /** The slope over the stretch that the curve above shows. */
  setSlope(slope: ForceCurve | null, span: Span, whole: Span): void
  setDisplay(display: ForceDisplay): void
  /** Puts the cursor below the one of the curve; returns the slope there in shown units. */
  cursorAt(timeS: number | null): number | null
  destroy(): void
}

/** The slope of a curve below it, on the same time axis. It is moved by the curve above, and moves that one in turn. */
export function createSlopePlot(
  host: HTMLElement,
  options: { display: ForceDisplay; onCursor(timeS: number | null): void; onShow(span: Span): void },
): SlopePlot {
  let { display } = options
  let colours: PlotColours = readPlotColours(host)
  let slope: ForceCurve | null = null
  let span: Span = { fromS: 0, toS: 1 }
  let whole: Span = span
  /** While the curve above moves the cursor, this one does not answer. */
  let led = false

  const plot: uPlot = new uPlot(
    slopeOptions(
      host,
      { colours: () => colours, display: () => display },
      {
        draw: [() => drawZero(plot, colours)],
        setSelect: [takeSelection],
        setCursor: [tellCursor],
      },
    ),
    [[], []],
    host,
  )
  const endWheel = listenToWheel(plot, {
    view: () => ({ span, whole, leastS: (whole.toS - whole.fromS) / 1e5 }),
    show: options.onShow,
  })
  const endFitting = fitToHost(plot, host)
  const endThemeWatch = onThemeChange(() => {
    colours = readPlotColours(host)
    plot.redraw(false, true)
  })

  function takeSelection(): void {
    const { left, width } = plot.select
    if (width < 4) return
    options.onShow({ fromS: plot.posToVal(left, 'x'), toS: plot.posToVal(left + width, 'x') })
    plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false)
  }

  function tellCursor(): void {
    if (led) return
    const { idx } = plot.cursor
    options.onCursor(idx === null || idx === undefined ? null : (slope?.timeS[idx] ?? null))
  }

  function redraw(): void {
    const timeS = slope?.timeS ?? new Float64Array()
    const shown = Float64Array.from(slope?.force ?? [], (value) => value * display.factor)
    const inSight = shown.filter((_value, i) => timeS[i]! >= span.fromS && timeS[i]! <= span.toS)
    plot.batch(() => {
      plot.setData([timeS, shown], false)
      plot.setScale('x', { min: span.fromS, max: span.toS })
      plot.setScale('y', steadyRange(inSight))
    })
  }

  return {
    setSlope(next, nextSpan, nextWhole) {
      slope = next
      span = nextSpan
      whole = nextWhole
      redraw()
    },
    setDisplay(next) {
      display = next
      redraw()
    },
    cursorAt(timeS) {
      const index = timeS === null || slope === null ? -1 : nearestIndex(slope.timeS, timeS)
      led = true
      if (index < 0) plot.setCursor({ left: -10, top: -10 })
      else {
        const value = slope!.force[index]! * display.factor
        plot.setCursor({ left: plot.valToPos(slope!.timeS[index]!, 'x'), top: plot.valToPos(value, 'y') })
      }
      led = false
      return index < 0 ? null : slope!.force[index]! * display.factor
    },
    destroy() {
      endThemeWatch()
      endWheel()
      endFitting()
      plot.destroy()
    },
  }
}

function slopeOptions(
  host: HTMLElement,
  now: { colours(): PlotColours; display(): ForceDisplay },
  hooks: uPlot.Hooks.Arrays,
): uPlot.Options {
  return {
    width: Math.max(host.clientWidth, 100),
    height: Math.max(host.clientHeight, 60),
    legend: { show: false },
    padding: [8, lastTimeRoom, 0, 0],
    cursor: {
      y: false,
      drag: { x: true, y: false, setScale: false },
      points: { size: 7, width: 2, stroke: () => now.colours().marker, fill: () => now.colours().ground },
    },
    scales: { x: { time: false, auto: false }, y: { auto: false } },
    series: [{}, { stroke: () => now.colours().marker, width: 1.25, points: { show: false } }],
    axes: [
      themedAxis(now.colours, secondsOf, 30, 80),
      themedAxis(now.colours, (splits) => splits.map((split) => now.display().format(split)), valueAxisSize, 18),
    ],
    hooks,
  }
}

function drawZero(plot: uPlot, colours: PlotColours): void {
  const { ctx, bbox } = plot
  const y = plot.valToPos(0, 'y', true)
  if (y < bbox.top || y > bbox.top + bbox.height) return
  ctx.save()
  ctx.strokeStyle = colours.quiet
  ctx.lineWidth = devicePixelRatio
  ctx.beginPath()
  ctx.moveTo(bbox.left, y)
  ctx.lineTo(bbox.left + bbox.width, y)
  ctx.stroke()
  ctx.restore()
}

/**
 * The range of the slopes while the load rises: the fall at a break is hundreds of times steeper and would flatten all else.
 * Reaches three times the middle slope on both sides of it, or less where the slopes do.
 */
export function steadyRange(slopes: Float64Array): { min: number; max: number } {
  if (slopes.length === 0) return { min: 0, max: 1 }
  const sorted = slopes.toSorted()
  const at = (share: number) => sorted[Math.min(Math.floor(share * sorted.length), sorted.length - 1)]!
  const spread = Math.max(at(0.9) - at(0.1), Math.abs(at(0.9)) * 0.2)
  return valueRange(Math.max(at(0), Math.min(at(0.1), 0) - spread), Math.min(at(1), at(0.9) + spread), true)
}
