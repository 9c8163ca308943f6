import type uPlot from 'uplot'
import type { ForceCurve } from '#contract/breaks/curve.ts'
import type { LabelPlace } from '../labelPlaces.ts'
import type { PlotColours } from '../plotColours.ts'
import type { Span } from '../zoom.ts'
import { type LevelLine, type PointMark, scaledFont } from './plotMarks.ts'

/** A stretch of time that is shaded between two lines; `chosen`: with a bar along its top. */
export type ShadedSpan = Span & { chosen: boolean }
/** A band about a level, as wide as the noise on both sides. */
export type NoiseBand = Span & { value: number; halfWidth: number; label: string }
/** A straight line, from one point to another. */
export type StraightLine = { fromS: number; fromValue: number; toS: number; toValue: number; label: string }

/** Everything that is drawn about a curve, forces in the unit of the curve. */
export type CurveScene = {
  marks: readonly PointMark[]
  levels: readonly LevelLine[]
  spans: readonly ShadedSpan[]
  /** Where samples are missing: nothing is drawn from one side to the other. */
  gaps: readonly Span[]
  band: NoiseBand | null
  line: StraightLine | null
}

export const emptyScene: CurveScene = { marks: [], levels: [], spans: [], gaps: [], band: null, line: null }

/** The scene in shown units. */
export function scaledScene(scene: CurveScene, factor: number): CurveScene {
  const { marks, levels, spans, gaps, band, line } = scene
  return {
    marks: marks.map((mark) => ({ ...mark, value: mark.value * factor })),
    levels: levels.map((level) => ({ ...level, value: level.value * factor })),
    spans,
    gaps,
    band: band === null ? null : { ...band, value: band.value * factor, halfWidth: band.halfWidth * factor },
    line: line === null ? null : { ...line, fromValue: line.fromValue * factor, toValue: line.toValue * factor },
  }
}

/** Shades stretches below the curve. A stretch narrower than a few pixels is still seen by its lines. */
export function drawSpans(plot: uPlot, spans: readonly ShadedSpan[], colours: PlotColours): void {
  const { ctx, bbox } = plot
  const ratio = devicePixelRatio
  within(plot, () => {
    for (const span of spans) {
      const left = plot.valToPos(span.fromS, 'x', true)
      const right = plot.valToPos(span.toS, 'x', true)
      ctx.globalAlpha = span.chosen ? 0.13 : 0.07
      ctx.fillStyle = colours.marker
      ctx.fillRect(left, bbox.top, right - left, bbox.height)
      ctx.globalAlpha = span.chosen ? 1 : 0.45
      ctx.strokeStyle = colours.marker
      ctx.lineWidth = (span.chosen ? 1.5 : 1) * ratio
      ctx.setLineDash(span.chosen ? [] : [2 * ratio, 3 * ratio])
      ctx.beginPath()
      for (const x of right - left < 2 * ratio ? [left] : [left, right]) {
        ctx.moveTo(x, bbox.top)
        ctx.lineTo(x, bbox.top + bbox.height)
      }
      ctx.stroke()
      if (span.chosen) ctx.fillRect(left - 2 * ratio, bbox.top, Math.max(right - left, 0) + 4 * ratio, 4 * ratio)
    }
  })
}

/** The level at rest with the noise about it, named above itself; where that name stands, so that others keep clear of it. */
export function drawBand(plot: uPlot, band: NoiseBand | null, colours: PlotColours): LabelPlace[] {
  if (band === null) return []
  const { ctx, bbox } = plot
  const ratio = devicePixelRatio
  const named: LabelPlace[] = []
  within(plot, () => {
    const left = plot.valToPos(band.fromS, 'x', true)
    const right = plot.valToPos(band.toS, 'x', true)
    const top = plot.valToPos(band.value + band.halfWidth, 'y', true)
    const bottom = plot.valToPos(band.value - band.halfWidth, 'y', true)
    const middle = plot.valToPos(band.value, 'y', true)
    ctx.fillStyle = colours.warning
    ctx.globalAlpha = 0.3
    ctx.fillRect(left, top, right - left, Math.max(bottom - top, 2 * ratio))
    ctx.globalAlpha = 1
    ctx.strokeStyle = colours.warning
    ctx.lineWidth = ratio
    ctx.setLineDash([6 * ratio, 3 * ratio])
    ctx.beginPath()
    ctx.moveTo(bbox.left, middle)
    ctx.lineTo(bbox.left + bbox.width, middle)
    ctx.stroke()
    ctx.font = scaledFont(colours.font, ratio)
    const width = ctx.measureText(band.label).width
    const fits = Math.min(right, bbox.left + bbox.width) - Math.max(left, bbox.left) >= width + 12 * ratio
    // Where the rest is too short for its name, the load is away from zero at the middle of the plot
    const labelX = fits ? Math.max(left, bbox.left) + 6 * ratio : bbox.left + (bbox.width - width) / 2
    const labelY = fits ? top - 4 * ratio : middle - 4 * ratio
    if (!fits) {
      ctx.globalAlpha = 0.85
      ctx.fillStyle = colours.ground
      ctx.fillRect(labelX - 3 * ratio, labelY - 14 * ratio, width + 6 * ratio, 16 * ratio)
      ctx.globalAlpha = 1
    }
    ctx.fillStyle = colours.quiet
    ctx.textBaseline = 'bottom'
    ctx.fillText(band.label, labelX, labelY)
    named.push({ x: labelX, y: labelY - 7 * ratio, width })
  })
  return named
}

/** A straight line in long dashes, named at its middle. */
export function drawStraightLine(plot: uPlot, line: StraightLine | null, colours: PlotColours): void {
  if (line === null) return
  const { ctx, bbox } = plot
  const ratio = devicePixelRatio
  within(plot, () => {
    const x = plot.valToPos(line.toS, 'x', true)
    const y = plot.valToPos(line.toValue, 'y', true)
    const footX = plot.valToPos(line.fromS, 'x', true)
    const footY = plot.valToPos(line.fromValue, 'y', true)
    ctx.strokeStyle = colours.warning
    ctx.lineWidth = 1.75 * ratio
    ctx.setLineDash([14 * ratio, 5 * ratio, 3 * ratio, 5 * ratio])
    ctx.beginPath()
    ctx.moveTo(footX, footY)
    ctx.lineTo(x, y)
    ctx.stroke()
    ctx.setLineDash([])
    ctx.beginPath()
    ctx.moveTo(footX, footY - 7 * ratio)
    ctx.lineTo(footX, footY + 7 * ratio)
    ctx.stroke()
    ctx.font = scaledFont(colours.font, ratio)
    ctx.fillStyle = colours.ink
    ctx.textBaseline = 'bottom'
    const width = ctx.measureText(line.label).width
    // Above the line and left of it: a load that rises leaves that place free
    const labelX = Math.max((footX + x) / 2 - width - 14 * ratio, bbox.left + 6 * ratio)
    const labelY = Math.max((footY + y) / 2, bbox.top + 24 * ratio)
    ctx.globalAlpha = 0.85
    ctx.fillStyle = colours.ground
    ctx.fillRect(labelX - 3 * ratio, labelY - 18 * ratio, width + 6 * ratio, 20 * ratio)
    ctx.globalAlpha = 1
    ctx.fillStyle = colours.ink
    ctx.fillText(line.label, labelX, labelY)
  })
}

/** A second curve beside the first, in dashes and in another colour. */
export function drawBeside(plot: uPlot, curve: ForceCurve | null, factor: number, colours: PlotColours): void {
  if (curve === null) return
  const { ctx } = plot
  const ratio = devicePixelRatio
  within(plot, () => {
    ctx.strokeStyle = colours.marker
    ctx.lineWidth = 1.5 * ratio
    ctx.setLineDash([7 * ratio, 4 * ratio])
    ctx.beginPath()
    for (let i = 0; i < curve.timeS.length; i++)
      ctx.lineTo(plot.valToPos(curve.timeS[i]!, 'x', true), plot.valToPos(curve.force[i]! * factor, 'y', true))
    ctx.stroke()
  })
}

/** Draws inside the plotting area alone, and leaves the canvas as it was. */
function within(plot: uPlot, draw: () => void): void {
  const { ctx, bbox } = plot
  ctx.save()
  ctx.beginPath()
  ctx.rect(bbox.left, bbox.top, bbox.width, bbox.height)
  ctx.clip()
  ctx.textAlign = 'left'
  draw()
  ctx.restore()
}
