// Held by tests/browser/liveBreak.spec.ts.
import uPlot from 'uplot'
import type { LiveFrame } from '#contract/bench/bench.ts'
import { createThinnedPoints } from '../decimation.ts'
import { fitToHost } from '../fitToHost.ts'
import type { ForceDisplay } from '../forceDisplay.ts'
import { onThemeChange, type PlotColours, readPlotColours } from '../plotColours.ts'
import { drawLevels, drawMarks, type LevelLine } from '../recorded/plotMarks.ts'
import { liveOptions } from './liveOptions.ts'
import { type LivePeak, peakInFrame, peakInRing, peakMark } from './livePeak.ts'
import { latestOf, moves, shownRange, thinInView } from './liveSamples.ts'
import { advanceView, enterSituation, type LiveSituation, startView } from './liveView.ts'
import type { SampleRing } from './sampleRing.ts'

export type LivePlotOptions = {
  /** Filled by its owner before `push` tells of a frame. */
  ring: SampleRing
  display: ForceDisplay
  leastForce: number
  reducedMotion: boolean
}

export type LivePlot = {
  push(frame: LiveFrame): void
  /** `captureFromS`: where the capture comes into view; `peakForce`: the peak as evaluated, once it is known. */
  setSituation(situation: LiveSituation, captureFromS: number | null, peakForce: number | null): void
  /** Level lines in the unit of the stream. */
  setLevels(levels: readonly LevelLine[]): void
  setDisplay(display: ForceDisplay, leastForce: number): void
  destroy(): void
}

/** Thinned and drawn at most this many columns wide; a wider canvas gets wider columns. */
const mostColumns = 1200

/** Name under which each drawn frame is measured; a PerformanceObserver may listen to it. */
export const liveFrameMeasure = 'live-frame'

/**
 * The curve as it happens. Frames only fill a ring buffer; everything is drawn once per animation frame, and not at all while
 * nothing arrives and nothing moves.
 */
export function createLivePlot(host: HTMLElement, options: LivePlotOptions): LivePlot {
  const { ring } = options
  let thinned = createThinnedPoints(mostColumns)
  let { display, leastForce } = options
  let view = startView(leastForce)
  let levels: readonly LevelLine[] = []
  let peak: LivePeak | null = null
  let colours: PlotColours = readPlotColours(host)
  let requested = 0
  let lastFrameMs = 0
  let dirty = true
  /** Of an ended capture: electrical spikes stand higher, but do not set the axis. */
  let evaluatedPeak: number | null = null

  const now = { colours: () => colours, display: () => display, view: () => view }
  const plot: uPlot = new uPlot(liveOptions(host, now, { draw: [drawOver] }), [[], []], host)
  const endFitting = fitToHost(plot, host, wake)
  const endThemeWatch = onThemeChange(() => {
    colours = readPlotColours(host)
    plot.redraw(false, true)
    wake()
  })

  function drawOver(): void {
    drawLevels(
      plot,
      levels.map((level) => ({ ...level, value: level.value * display.factor })),
      colours,
    )
    if (peak !== null && view.situation !== 'rolling') drawMarks(plot, [peakMark(peak, display)], colours)
  }

  function wake(): void {
    dirty = true
    if (requested === 0) requested = requestAnimationFrame(draw)
  }

  function draw(nowMs: number): void {
    requested = 0
    const began = performance.now()
    const frameS = Math.min((nowMs - lastFrameMs) / 1000, 0.1)
    lastFrameMs = nowMs
    const columns = Math.min(Math.max(plot.bbox.width, 200), mostColumns)
    const reach = thinInView(ring, view, columns, display.factor, thinned)
    const before = view
    view = advanceView(view, latestOf(ring), evaluatedPeak ?? reach.highest, leastForce, frameS, options.reducedMotion)
    const range = shownRange(view, reach.lowest, display.factor, evaluatedPeak !== null)
    plot.batch(() => {
      plot.setData([thinned.timeS.subarray(0, thinned.length), thinned.force.subarray(0, thinned.length)], false)
      plot.setScale('x', { min: view.shownFromS, max: view.shownToS })
      plot.setScale('y', range)
    })
    dirty = false
    performance.measure(liveFrameMeasure, { start: began, end: performance.now() })
    // Whoever observes has been told; kept measures would grow for as long as the page is open.
    performance.clearMeasures(liveFrameMeasure)
    if (moves(before, view) || dirty) wake()
  }

  wake()

  return {
    push(frame) {
      if (view.situation === 'capturing' && frame.peak !== null && (peak === null || frame.peak > peak.force))
        peak = peakInFrame(frame, frame.peak)
      wake()
    },
    setSituation(situation, captureFromS, peakForce) {
      if (situation === 'capturing' && view.situation !== 'capturing') peak = null
      view = enterSituation(view, situation, latestOf(ring), leastForce, captureFromS)
      evaluatedPeak = situation === 'held' ? peakForce : null
      if (evaluatedPeak !== null && view.captureFromS !== null)
        peak = peakInRing(ring, view.captureFromS, evaluatedPeak)
      wake()
    },
    setLevels(next) {
      levels = next
      wake()
    },
    setDisplay(next, least) {
      display = next
      leastForce = least
      thinned = createThinnedPoints(mostColumns)
      wake()
    },
    destroy() {
      cancelAnimationFrame(requested)
      endThemeWatch()
      endFitting()
      plot.destroy()
    },
  }
}
