import type uPlot from 'uplot'
import type { ForceDisplay } from '../forceDisplay.ts'
import type { PlotColours } from '../plotColours.ts'
import { lastTimeRoom, themedAxis } from '../timeAxis.ts'
import { nameOfTime, wholeSeconds } from './liveAxis.ts'
import type { LiveView } from './liveView.ts'

/** How the plot library draws the live curve: one line on axes of time and force, without a cursor. */
export function liveOptions(
  host: HTMLElement,
  now: { colours(): PlotColours; display(): ForceDisplay; view(): LiveView },
  hooks: uPlot.Hooks.Arrays,
): uPlot.Options {
  return {
    width: Math.max(host.clientWidth, 100),
    height: Math.max(host.clientHeight, 100),
    legend: { show: false },
    cursor: { show: false },
    padding: [14, lastTimeRoom, 0, 0],
    scales: { x: { time: false, auto: false }, y: { auto: false } },
    series: [{}, { stroke: () => now.colours().curve, width: 2, points: { show: false }, spanGaps: true }],
    axes: [
      {
        ...themedAxis(now.colours, (splits) => splits.map((split) => nameOfTime(split, now.view())), 34, 90),
        splits: () => wholeSeconds(now.view()),
      },
      themedAxis(now.colours, (splits) => splits.map((split) => now.display().format(split)), 70, 56),
    ],
    hooks,
  }
}
