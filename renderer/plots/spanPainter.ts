import type { ColumnSpans } from './columnSpans.ts'

/** A picture of columns x rows pixels, four bytes each (red, green, blue, opacity) as a canvas takes it. */
export type Pixels = { words: Uint32Array; columns: number; rows: number }

export type Rgb = { red: number; green: number; blue: number }

/** Pixels drawn and left out along a dashed line, in turns. */
export type Dash = { on: number; off: number }

/** `width`: of the line, in pixels. */
export type Stroke = Rgb & { width: number; dash: Dash | null }

/** A line that falls by more pixels than this in one column counts as steep. */
const steepFrom = 4

/**
 * Paints the spans of a curve as a line. Its upper and lower edge are softened by how much of the pixel they cover; a wide
 * line takes several columns where it is steep. One pass over the columns: what it costs does not depend on the number of samples.
 */
export function paintSpans(pixels: Pixels, spans: ColumnSpans, stroke: Stroke): void {
  const { columns, rows, words } = pixels
  const reach = stroke.width / 2
  const brush = Math.max(Math.round(stroke.width * 0.8), 1)
  const colour = (stroke.blue << 16) | (stroke.green << 8) | stroke.red
  const opaque = (colour | 0xff000000) >>> 0
  const period = stroke.dash === null ? 1 : stroke.dash.on + stroke.dash.off
  let travelled = 0
  for (let column = 0; column < spans.top.length; column++) {
    const top = spans.top[column]!
    const bottom = spans.bottom[column]!
    if (!(bottom >= top)) continue
    const height = bottom - top
    const isSteep = height > steepFrom
    // A slanted line is higher than it is wide; a steep one is as wide as the brush.
    const half = isSteep ? height / 2 + reach : Math.max(height / 2 + 0.5, reach * Math.sqrt(1 + height * height))
    const start = (top + bottom) / 2 - half
    const end = (top + bottom) / 2 + half
    const firstRow = Math.max(Math.floor(start), 0)
    const lastRow = Math.min(Math.ceil(end) - 1, rows - 1)
    const across = isSteep ? brush : 1
    const firstColumn = Math.max(column - ((across - 1) >> 1), 0)
    const lastColumn = Math.min(firstColumn + across - 1, columns - 1)
    // A steep stretch is as long as it is high, so that dashes are of one length everywhere.
    const downwards = isDownwards(spans, column)
    const on = stroke.dash === null ? 0 : Math.max(stroke.dash.on - across + 1, 1)
    for (let row = firstRow; row <= lastRow; row++) {
      if (stroke.dash !== null) {
        const along = travelled + (downwards ? row - firstRow : lastRow - row)
        if (along % period >= on) continue
      }
      const cover = Math.min(row + 1, end) - Math.max(row, start)
      if (cover < 0.996) {
        // Once only: laid over itself from the columns beside, a soft edge would grow hard.
        const at = row * columns + column
        words[at] = over(words[at]!, stroke, cover)
      } else for (let c = firstColumn; c <= lastColumn; c++) words[row * columns + c] = opaque
    }
    travelled += Math.max(height, 1)
  }
}

/** Tints what lies between the top of one line and the bottom of another, with part of a colour's strength. */
export function tintBetween(
  pixels: Pixels,
  upper: ColumnSpans,
  lower: ColumnSpans,
  colour: Rgb,
  strength: number,
): void {
  const { columns, rows, words } = pixels
  for (let column = 0; column < columns; column++) {
    const top = upper.top[column]!
    const bottom = lower.bottom[column]!
    if (!(bottom >= top)) continue
    const lastRow = Math.min(Math.round(bottom), rows - 1)
    for (let row = Math.max(Math.round(top), 0); row <= lastRow; row++) {
      const at = row * columns + column
      words[at] = over(words[at]!, colour, strength)
    }
  }
}

function isDownwards({ top, bottom }: ColumnSpans, column: number): boolean {
  if (column === 0) return false
  const middle = (top[column]! + bottom[column]!) / 2
  return !(middle < (top[column - 1]! + bottom[column - 1]!) / 2)
}

/** A colour laid over a pixel with part of its strength; the opacity of a canvas is not multiplied into its colours. */
function over(below: number, { red, green, blue }: Rgb, cover: number): number {
  const belowOpacity = (below >>> 24) / 255
  const rest = belowOpacity * (1 - cover)
  const opacity = cover + rest
  if (opacity <= 0) return below
  const mixed = (above: number, shift: number) => (above * cover + ((below >>> shift) & 255) * rest) / opacity + 0.5
  return (((opacity * 255 + 0.5) << 24) | (mixed(blue, 16) << 16) | (mixed(green, 8) << 8) | mixed(red, 0)) >>> 0
}

/** Red, green and blue of a colour written as "#rrggbb". Throws RangeError for anything else. */
export function readHexColour(text: string): Rgb {
  if (!/^#[0-9a-f]{6}$/i.test(text)) throw new RangeError(`readHexColour requires #rrggbb, not "${text}"`)
  const value = Number.parseInt(text.slice(1), 16)
  return { red: value >> 16, green: (value >> 8) & 255, blue: value & 255 }
}
