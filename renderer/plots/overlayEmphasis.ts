import type uPlot from 'uplot'
import type { ColumnSpans } from './columnSpans.ts'

/** Strokes one curve over the others, with a rim in the colour of the ground that sets it off from them. */
export function drawEmphasis(
  plot: uPlot,
  { top, bottom }: ColumnSpans,
  colours: { curve: string; ground: string },
  dash: readonly number[],
): void {
  const { ctx, bbox } = plot
  ctx.save()
  ctx.beginPath()
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height)
  ctx.clip()
  ctx.lineJoin = 'round'
  ctx.beginPath()
  let before = Number.NaN
  for (let column = 0; column < top.length; column++) {
    const [high, low] = [top[column]!, bottom[column]!]
    if (!(low >= high)) continue
    const x = bbox.left + column + 0.5
    // From where the line arrives to the far end, so that it does not cross each column twice.
    const first = Math.abs(before - low) < Math.abs(before - high) ? low : high
    const second = first === low ? high : low
    ctx.lineTo(x, bbox.top + first)
    if (second - first > 0.5 || first - second > 0.5) ctx.lineTo(x, bbox.top + second)
    before = second
  }
  ctx.setLineDash([...dash])
  ctx.strokeStyle = colours.ground
  ctx.lineWidth = 5 * devicePixelRatio
  ctx.stroke()
  ctx.strokeStyle = colours.curve
  ctx.lineWidth = 2.25 * devicePixelRatio
  ctx.stroke()
  ctx.restore()
}
