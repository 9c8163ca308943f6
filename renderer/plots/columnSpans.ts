import { samplesIn } from '#domain/signal/stream/thinning.ts'
import { levelFor, type MinMaxLevels, stretchOf } from './minMaxLevels.ts'

/**
 * What a curve covers in each column of pixels: its highest and lowest point there, as pixels from the top (so `top` is the
 * smaller number). The line between two samples counts with them. NaN where the curve is not.
 */
export type ColumnSpans = { top: Float32Array; bottom: Float32Array }

/** Where times and forces of a curve come to lie: x = (time - originS) * xPerS, y = zeroY - force * yPerForce. */
export type PixelMap = { originS: number; xPerS: number; zeroY: number; yPerForce: number; columns: number }

/** Room for the spans of a plot so many columns wide. */
export function createColumnSpans(columns: number): ColumnSpans {
  return { top: new Float32Array(columns), bottom: new Float32Array(columns) }
}

/**
 * Fills in what a curve covers, by the level that fits the columns: at most eight points a column, however many samples it
 * stands for, and the highest and lowest sample always among them. What reaches highest at the border of two columns may be
 * shown in either.
 */
export function fillColumnSpans(curve: MinMaxLevels, map: PixelMap, spans: ColumnSpans): void {
  fillWithStretches([curve], map, spans)
}

/** The same for a line that is interrupted: nothing is drawn between its stretches. */
export function fillWithStretches(stretches: readonly MinMaxLevels[], map: PixelMap, spans: ColumnSpans): void {
  spans.top.fill(Number.NaN)
  spans.bottom.fill(Number.NaN)
  for (const stretch of stretches) addStretch(stretch, map, spans)
}

function addStretch(curve: MinMaxLevels, map: PixelMap, spans: ColumnSpans): void {
  const { timeS, force, levels } = curve
  const { originS, xPerS, columns } = map
  const { from, to } = samplesIn(timeS, originS, originS + columns / xPerS)
  if (to - from < 1) return
  const covered = Math.min((timeS[to - 1]! - timeS[from]!) * xPerS, columns)
  const level = levelFor(curve, (to - from) / Math.max(covered, 1))
  const points = level === 0 ? null : levels[level - 1]!
  const stretch = stretchOf(level)
  const first = points === null ? from : 2 * Math.floor(from / stretch)
  const last = points === null ? to : Math.min(2 * Math.ceil(to / stretch), points.length)

  let x = Number.NaN
  let y = Number.NaN
  for (let i = first; i < last; i++) {
    const sample = points === null ? i : points[i]!
    const nextX = (timeS[sample]! - originS) * xPerS
    const nextY = map.zeroY - force[sample]! * map.yPerForce
    if (i === first) extend(spans, Math.floor(nextX), nextY)
    else line(spans, x, y, nextX, nextY)
    x = nextX
    y = nextY
  }
}

function line(spans: ColumnSpans, x: number, y: number, nextX: number, nextY: number): void {
  const column = Math.floor(x)
  const nextColumn = Math.floor(nextX)
  if (column === nextColumn) {
    extend(spans, column, nextY)
    return
  }
  const slope = (nextY - y) / (nextX - x)
  const from = Math.max(column, -1)
  const to = Math.min(nextColumn, spans.top.length)
  for (let c = from; c <= to; c++) {
    extend(spans, c, c === column ? y : y + (c - x) * slope)
    extend(spans, c, c === nextColumn ? nextY : y + (c + 1 - x) * slope)
  }
}

function extend({ top, bottom }: ColumnSpans, column: number, y: number): void {
  if (column < 0 || column >= top.length) return
  // A comparison with NaN is false, so the first point of a column sets both.
  if (!(top[column]! <= y)) top[column] = y
  if (!(bottom[column]! >= y)) bottom[column] = y
}
