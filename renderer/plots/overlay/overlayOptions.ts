import type uPlot from 'uplot'
import type { ForceDisplay } from '../forceDisplay.ts'
import type { PlotColours } from '../plotColours.ts'
import { lastTimeRoom, themedAxis, valueAxisSize } from '../timeAxis.ts'

/** How curves over each other are shown. `axisUnit`: what the numbers on the upright axis are. */
export type OverlayDisplay = { display: ForceDisplay; axisUnit: string; timeUnit: string }

/** How the plot library draws axes, cursor and rectangle; the curves themselves are painted over it. */
export function overlayOptions(
  host: HTMLElement,
  now: { colours(): PlotColours; shown(): OverlayDisplay },
  hooks: uPlot.Hooks.Arrays,
): uPlot.Options {
  return {
    width: Math.max(host.clientWidth, 100),
    height: Math.max(host.clientHeight, 100),
    legend: { show: false },
    padding: [24, lastTimeRoom, 0, 0],
    cursor: { drag: { x: true, y: true, uni: 24, setScale: false }, points: { show: false }, y: false },
    scales: { x: { time: false, auto: false }, y: { auto: false } },
    series: [{}, { show: false }],
    axes: [
      themedAxis(now.colours, (splits) => splits.map((split) => `${written(split)} ${now.shown().timeUnit}`), 34, 80),
      themedAxis(now.colours, (splits) => splits.map((split) => now.shown().display.format(split)), valueAxisSize, 40),
    ],
    hooks,
  }
}

function written(split: number): string {
  return String(Number(split.toPrecision(9))).replace('-', '−')
}
