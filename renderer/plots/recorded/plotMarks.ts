import type uPlot from 'uplot'
import { clearHeight, type LabelPlace, wantedPlace } from '../labelPlaces.ts'
import type { PlotColours } from '../plotColours.ts'

/** A horizontal line with its name, in units of the force axis. */
export type LevelLine = { value: number; label: string; kind: 'threshold' | 'warning' | 'alarm' }
/** A named point of the curve. `shape` tells kinds apart without colour; word: a person's. `chosen`: filled. */
export type PointMark = {
  timeS: number
  value: number
  label: string
  shape: 'peak' | 'onset' | 'break' | 'event' | 'word'
  chosen?: boolean
}

const dashes = { threshold: [2, 4], warning: [10, 5], alarm: [] } as const

/** Draws level lines that lie within the axis, each with its name above its right end. */
export function drawLevels(plot: uPlot, levels: readonly LevelLine[], colours: PlotColours): void {
  const { ctx, bbox } = plot
  const ratio = devicePixelRatio
  for (const level of levels) {
    const { min, max } = plot.scales.y ?? {}
    if (min === undefined || max === undefined || min === null || max === null) continue
    if (level.value < min || level.value > max) continue
    const y = Math.round(plot.valToPos(level.value, 'y', true)) + 0.5
    const colour = level.kind === 'alarm' ? colours.alarm : level.kind === 'warning' ? colours.warning : colours.quiet
    ctx.save()
    ctx.strokeStyle = colour
    ctx.lineWidth = (level.kind === 'alarm' ? 2 : 1) * ratio
    ctx.setLineDash(dashes[level.kind].map((length) => length * ratio))
    ctx.beginPath()
    ctx.moveTo(bbox.left, y)
    ctx.lineTo(bbox.left + bbox.width, y)
    ctx.stroke()
    ctx.fillStyle = colour
    ctx.font = scaledFont(colours.font, ratio)
    ctx.textAlign = 'right'
    // The two capacity lines may lie close together: the lower one is named below itself.
    const above = level.kind !== 'warning' && y - bbox.top > 22 * ratio
    ctx.textBaseline = above ? 'bottom' : 'top'
    ctx.fillText(level.label, bbox.left + bbox.width - 6 * ratio, y + (above ? -3 : 4) * ratio)
    ctx.restore()
  }
}

/**
 * Draws named points with a shape each, their labels kept inside the plot and clear of one another: those of peaks, and then
 * those that come first, keep their place; marks that come first stand above the others. `standing`: what is named already.
 */
export function drawMarks(
  plot: uPlot,
  marks: readonly PointMark[],
  colours: PlotColours,
  standing: readonly LabelPlace[] = [],
): void {
  const { ctx, bbox } = plot
  const ratio = devicePixelRatio
  const placed = marks
    .map((mark) => ({ mark, x: plot.valToPos(mark.timeS, 'x', true), y: plot.valToPos(mark.value, 'y', true) }))
    .filter(
      ({ x, y }) =>
        x >= bbox.left - 1 && x <= bbox.left + bbox.width + 1 && y >= bbox.top - 1 && y <= bbox.top + bbox.height + 1,
    )
  const taken: LabelPlace[] = [...standing]
  ctx.save()
  ctx.font = scaledFont(colours.font, ratio)
  ctx.textBaseline = 'middle'
  ctx.textAlign = 'left'
  const area = { left: bbox.left, right: bbox.left + bbox.width, top: bbox.top, bottom: bbox.top + bbox.height }
  const room = { step: 18 * ratio, highest: area.top - 4 * ratio, lowest: area.bottom - 12 * ratio }
  const fallX = placed.find(({ mark }) => mark.shape === 'break')?.x ?? null
  const shapeR = 6 * ratio
  const shapes = placed.map(({ mark, x, y }) => ({ mark, x: x - shapeR, y, width: 2 * shapeR }))
  // The names of peaks keep their place; others lie on no other mark
  for (const { mark, x, y } of placed.toSorted((one, other) => rankOf(one.mark) - rankOf(other.mark))) {
    const width = ctx.measureText(mark.label).width
    const wanted = wantedPlace({ shape: mark.shape, x, y }, width, area, fallX, ratio)
    const labelX = wanted.x
    const others = rankOf(mark) === 0 ? [] : shapes.filter((shape) => shape.mark !== mark)
    const labelY = clearHeight(wanted, [...taken, ...others], room)
    taken.push({ x: labelX, y: labelY, width })
    ctx.fillStyle = colours.ground
    ctx.globalAlpha = 0.85
    ctx.fillRect(labelX - 3 * ratio, labelY - 9 * ratio, width + 6 * ratio, 18 * ratio)
    ctx.globalAlpha = 1
    ctx.fillStyle = colours.ink
    ctx.fillText(mark.label, labelX, labelY)
  }
  ctx.restore()
  // Whole also where the point lies on the edge of the plot
  ctx.save()
  ctx.strokeStyle = colours.marker
  ctx.lineWidth = 1.75 * ratio
  for (const { mark, x, y } of placed.toReversed()) {
    ctx.fillStyle = mark.chosen || mark.shape === 'word' ? colours.marker : colours.ground
    traceShape(ctx, mark.shape, x, y, 5.5 * ratio)
    ctx.fill()
    ctx.stroke()
  }
  ctx.restore()
}

const rankOf = ({ shape }: PointMark) => (shape === 'peak' || shape === 'word' ? 0 : 1)

/** Draws the sample that is kept: a line through it from top to bottom, and a ring about it. */
export function drawKept(plot: uPlot, timeS: number, value: number, colours: PlotColours): void {
  const { ctx, bbox } = plot
  const ratio = devicePixelRatio
  const x = plot.valToPos(timeS, 'x', true)
  const y = plot.valToPos(value, 'y', true)
  ctx.save()
  ctx.beginPath()
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height)
  ctx.clip()
  ctx.strokeStyle = colours.marker
  ctx.lineWidth = 1.5 * ratio
  ctx.beginPath()
  ctx.moveTo(x, bbox.top)
  ctx.lineTo(x, bbox.top + bbox.height)
  ctx.moveTo(x + 8 * ratio, y)
  ctx.arc(x, y, 8 * ratio, 0, 2 * Math.PI)
  ctx.stroke()
  ctx.restore()
}

function traceShape(ctx: CanvasRenderingContext2D, shape: PointMark['shape'], x: number, y: number, r: number): void {
  ctx.beginPath()
  if (shape === 'peak' || shape === 'word') {
    ctx.moveTo(x, y - r * 1.2)
    ctx.lineTo(x + r * 1.2, y)
    ctx.lineTo(x, y + r * 1.2)
    ctx.lineTo(x - r * 1.2, y)
    ctx.closePath()
    // A ring around it: not the peak that was found
    if (shape === 'word') {
      ctx.moveTo(x + r * 1.9, y)
      ctx.arc(x, y, r * 1.9, 0, 2 * Math.PI, true)
    }
  } else if (shape === 'onset') {
    ctx.arc(x, y, r, 0, 2 * Math.PI)
  } else if (shape === 'break') {
    ctx.rect(x - r, y - r, 2 * r, 2 * r)
  } else {
    ctx.moveTo(x, y - r)
    ctx.lineTo(x + r, y + r)
    ctx.lineTo(x - r, y + r)
    ctx.closePath()
  }
}

/** Canvas text is sized in device pixels. */
export function scaledFont(font: string, ratio: number): string {
  return font.replace(/([\d.]+)px/, (_all, size: string) => `${Number(size) * ratio}px`)
}
