// Held by tests/browser/everyScreen.spec.ts.
import type uPlot from 'uplot'
import type { ForceDisplay } from '../forceDisplay.ts'
import type { PlotColours } from '../plotColours.ts'
import { lastTimeRoom, secondsOf, themedAxis, valueAxisSize } from '../timeAxis.ts'
import type { Span } from '../zoom.ts'
import { movesAlong } from './recordedGestures.ts'

/** Samples that lie this far apart are shown as dots as well, so that each of them can be told. */
const dotsFromPx = 12

/** How the plot library draws a stored curve: one line that ends where samples are missing, on axes of time and force. */
export function recordedOptions(
  host: HTMLElement,
  now: { colours(): PlotColours; display(): ForceDisplay; gaps(): readonly Span[] },
  hooks: uPlot.Hooks.Arrays,
): uPlot.Options {
  return {
    width: Math.max(host.clientWidth, 100),
    height: Math.max(host.clientHeight, 100),
    legend: { show: false },
    padding: [24, lastTimeRoom, 0, 0],
    cursor: {
      drag: { x: true, y: false, setScale: false },
      points: { size: 9, width: 2, stroke: () => now.colours().marker, fill: () => now.colours().ground },
      bind: {
        mousedown: (_plot, _target, handler) => (event) => (movesAlong(event) ? null : handler(event)),
      },
    },
    scales: { x: { time: false, auto: false }, y: { auto: false } },
    series: [
      {},
      {
        stroke: () => now.colours().curve,
        width: 1.75,
        points: { show: (_plot, _series, from, to) => (to - from) * dotsFromPx <= host.clientWidth, size: 4 },
        gaps: (drawn): uPlot.Series.Gaps =>
          now.gaps().map(({ fromS, toS }) => [drawn.valToPos(fromS, 'x', true), drawn.valToPos(toS, 'x', true)]),
      },
    ],
    axes: [
      themedAxis(now.colours, secondsOf, 34, 80),
      themedAxis(now.colours, (splits) => splits.map((split) => now.display().format(split)), valueAxisSize, 40),
    ],
    hooks,
  }
}
