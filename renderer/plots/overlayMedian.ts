import type uPlot from 'uplot'
import type { OverlayMedian } from './overlayCurve.ts'

/** Fills the band between the quartiles. `factor`: from the values of the median to shown ones. */
export function drawBand(plot: uPlot, { grid, lower, upper }: OverlayMedian, factor: number, colour: string): void {
  const { ctx } = plot
  ctx.fillStyle = colour
  for (const [from, to] of stretchesOf(grid, upper, plot)) {
    ctx.beginPath()
    for (let i = from; i < to; i++) ctx.lineTo(plot.valToPos(grid[i]!, 'x', true), yOf(plot, upper[i]!, factor))
    for (let i = to - 1; i >= from; i--) ctx.lineTo(plot.valToPos(grid[i]!, 'x', true), yOf(plot, lower[i]!, factor))
    ctx.fill()
  }
}

/** Strokes one line of the median's grid with whatever line style the context has. */
export function strokeGridLine(plot: uPlot, grid: Float64Array, values: Float64Array, factor: number): void {
  for (const [from, to] of stretchesOf(grid, values, plot)) {
    plot.ctx.beginPath()
    for (let i = from; i < to; i++) plot.ctx.lineTo(plot.valToPos(grid[i]!, 'x', true), yOf(plot, values[i]!, factor))
    plot.ctx.stroke()
  }
}

function yOf(plot: uPlot, value: number, factor: number): number {
  return plot.valToPos(value * factor, 'y', true)
}

/** Stretches without NaN that touch the view, thinned to none of what lies outside it but one point on either side. */
function stretchesOf(grid: Float64Array, values: Float64Array, plot: uPlot): [number, number][] {
  const { min, max } = plot.scales.x ?? {}
  if (min == null || max == null) return []
  const found: [number, number][] = []
  let from = -1
  for (let i = 0; i <= grid.length; i++) {
    const inside = i < grid.length && grid[Math.min(i + 1, grid.length - 1)]! >= min && grid[Math.max(i - 1, 0)]! <= max
    if (inside && !Number.isNaN(values[i]!)) {
      if (from < 0) from = i
    } else if (from >= 0) {
      found.push([from, i])
      from = -1
    }
  }
  return found
}
