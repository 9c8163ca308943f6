import uPlot from 'uplot'
import type { LiveFrame } from '#contract/bench/bench.ts'
import { createThinnedPoints, thinByMinimumAndMaximum } from '../decimation.ts'
import { fitToHost } from '../fitToHost.ts'
import type { ForceDisplay } from '../forceDisplay.ts'
import { onThemeChange, type PlotColours, readPlotColours } from '../plotColours.ts'
import { drawLevels, drawMarks, type LevelLine, type PointMark } from '../recorded/plotMarks.ts'
import { roundUpCalmly } from './calmAxis.ts'
import { advanceView, enterSituation, type LiveSituation, leadS, startView } from './liveView.ts'
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
const secondSteps = [1, 2, 5, 10, 15, 20, 30, 60] as const

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
  let peak: { timeS: number; force: number } | null = null
  let colours: PlotColours = readPlotColours(host)
  let requested = 0
  let lastFrameMs = 0
  let dirty = true
  /** Of an ended capture: electrical spikes stand higher, but do not set the axis. */
  let evaluatedPeak: number | null = null

  const plot = new uPlot(plotOptions(), [[], []], host)
  const endFitting = fitToHost(plot, host, wake)
  const endThemeWatch = onThemeChange(() => {
    colours = readPlotColours(host)
    plot.redraw(false, true)
    wake()
  })

  function plotOptions(): uPlot.Options {
    return {
      width: Math.max(host.clientWidth, 100),
      height: Math.max(host.clientHeight, 100),
      legend: { show: false },
      cursor: { show: false },
      padding: [14, 12, 0, 0],
      scales: { x: { time: false, auto: false }, y: { auto: false } },
      series: [{}, { stroke: () => colours.curve, width: 2, points: { show: false }, spanGaps: true }],
      axes: [
        { ...axis((_plot, splits) => splits.map(secondsFromOrigin), 34, 90), splits: () => wholeSeconds() },
        axis((_plot, splits) => splits.map((split) => display.format(split)), 70, 56),
      ],
      hooks: { draw: [drawOver] },
    }
  }

  function axis(values: (plot: uPlot, splits: number[]) => string[], size: number, space: number): uPlot.Axis {
    return {
      stroke: () => colours.quiet,
      grid: { stroke: () => colours.grid, width: 1 },
      ticks: { show: false },
      font: colours.font,
      gap: 8,
      size,
      space,
      values,
    }
  }

  /** Rolling, the axis counts back from now; a capture counts from its start. */
  function originS(): number {
    return view.captureFromS === null ? view.shownToS : view.captureFromS + leadS
  }

  function secondsFromOrigin(timeS: number): string {
    const seconds = Math.round((timeS - originS()) * 10) / 10
    return seconds === 0 && view.captureFromS === null ? 'now' : `${seconds} s`.replace('-', '−')
  }

  function wholeSeconds(): number[] {
    const length = view.shownToS - view.shownFromS
    const step = secondSteps.find((seconds) => length / seconds <= 7) ?? 60
    const origin = originS()
    const splits: number[] = []
    for (let k = Math.ceil((view.shownFromS - origin) / step); origin + k * step <= view.shownToS + 1e-9; k++)
      splits.push(origin + k * step)
    return splits
  }

  function drawOver(): void {
    drawLevels(
      plot,
      levels.map((level) => ({ ...level, value: level.value * display.factor })),
      colours,
    )
    if (peak === null || view.situation === 'rolling') return
    const value = peak.force * display.factor
    const mark: PointMark = {
      timeS: peak.timeS,
      value,
      label: `${display.format(value)} ${display.unit}`,
      shape: 'peak',
    }
    drawMarks(plot, [mark], colours)
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
    const latestS = latestOf(ring)
    const columns = Math.min(Math.max(plot.bbox.width, 200), mostColumns)
    const columnS = (view.shownToS - view.shownFromS) / columns
    const from = Math.max(ring.indexFrom(view.shownFromS) - 1, 0)
    const to = Math.min(ring.indexFrom(view.shownToS) + 1, ring.length)
    thinByMinimumAndMaximum(ring, from, to, columnS, thinned)
    let highest = 0
    let lowest = 0
    for (let i = 0; i < thinned.length; i++) {
      const force = thinned.force[i]!
      // What came before the capture may still glide out of sight; it does not set the height of the capture.
      if (force > highest && thinned.timeS[i]! >= (view.captureFromS ?? Number.NEGATIVE_INFINITY)) highest = force
      if (force < lowest) lowest = force
      thinned.force[i] = force * display.factor
    }
    const before = view
    view = advanceView(view, latestS, evaluatedPeak ?? highest, leastForce, frameS, options.reducedMotion)
    const top = view.shownCeiling * display.factor
    const deepest = evaluatedPeak === null ? lowest * display.factor : Math.max(lowest * display.factor, -0.2 * top)
    const bottom = deepest < -0.06 * top ? -roundUpCalmly(-deepest) : -0.06 * top
    plot.batch(() => {
      plot.setData([thinned.timeS.subarray(0, thinned.length), thinned.force.subarray(0, thinned.length)], false)
      plot.setScale('x', { min: view.shownFromS, max: view.shownToS })
      plot.setScale('y', { min: bottom, max: top })
    })
    dirty = false
    performance.measure(liveFrameMeasure, { start: began, end: performance.now() })
    // Whoever observes has been told; kept measures would grow for as long as the page is open.
    performance.clearMeasures(liveFrameMeasure)
    const moves =
      view.shownCeiling !== before.shownCeiling ||
      view.shownFromS !== before.shownFromS ||
      view.shownToS !== before.shownToS
    if (moves || dirty) wake()
  }

  wake()

  return {
    push(frame) {
      if (view.situation === 'capturing' && frame.peak !== null && (peak === null || frame.peak > peak.force))
        peak = { timeS: timeNearest(frame, frame.peak), force: frame.peak }
      wake()
    },
    setSituation(situation, captureFromS, peakForce) {
      if (situation === 'capturing' && view.situation !== 'capturing') peak = null
      view = enterSituation(view, situation, latestOf(ring), leastForce, captureFromS)
      evaluatedPeak = situation === 'held' ? peakForce : null
      if (evaluatedPeak !== null && view.captureFromS !== null)
        peak = { timeS: timeInRing(ring, view.captureFromS, evaluatedPeak), force: evaluatedPeak }
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

function timeNearest(frame: LiveFrame, force: number): number {
  let best = 0
  for (let i = 1; i < frame.force.length; i++)
    if (Math.abs(frame.force[i]! - force) < Math.abs(frame.force[best]! - force)) best = i
  return frame.timeS[best] ?? 0
}

function latestOf(ring: SampleRing): number {
  return ring.length > 0 ? ring.timeAt(ring.length - 1) : 0
}

function timeInRing(ring: SampleRing, fromS: number, force: number): number {
  let best = ring.indexFrom(fromS)
  if (best >= ring.length) return fromS
  for (let i = best + 1; i < ring.length; i++)
    if (Math.abs(ring.forceAt(i) - force) < Math.abs(ring.forceAt(best) - force)) best = i
  return ring.timeAt(best)
}
