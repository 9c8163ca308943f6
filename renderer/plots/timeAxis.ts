import type uPlot from 'uplot'
import type { PlotColours } from './plotColours.ts'
import { scaledFont } from './recorded/plotMarks.ts'

/** Room of the axis that values stand on; plots above each other share it, so that their times lie above each other. */
export const valueAxisSize = 74

/** Room right of a plot, so that a time at its edge is not cut: half of a long one. */
export const lastTimeRoom = 28

/** An axis in the colours of the theme, which may change. */
export function themedAxis(
  colours: () => PlotColours,
  values: (splits: number[]) => string[],
  size: number,
  space: number,
): uPlot.Axis {
  return {
    stroke: () => colours().quiet,
    grid: { stroke: () => colours().grid, width: 1 },
    ticks: { show: false },
    font: colours().font,
    gap: 8,
    size,
    space,
    values: (_plot, splits) => values(splits),
  }
}

/** Times as an axis writes them. */
export function secondsOf(splits: number[]): string[] {
  return splits.map((split) => `${Number(split.toPrecision(9))} s`.replace('-', '−'))
}

/** Names the unit of the values at the upper end of their axis. */
export function drawUnit(plot: uPlot, unit: string, colours: PlotColours): void {
  const { ctx, bbox } = plot
  const ratio = devicePixelRatio
  ctx.save()
  ctx.font = scaledFont(colours.font, ratio)
  ctx.fillStyle = colours.quiet
  ctx.textAlign = 'right'
  ctx.textBaseline = 'middle'
  ctx.fillText(unit, bbox.left - 8 * ratio, bbox.top - 15 * ratio)
  ctx.restore()
}
