import type { Axis } from '../axes/axis.ts'
import { framed } from '../axes/frame.ts'
import { type Key, keyRows } from '../axes/keyRows.ts'
import type { Figure, FigureSize, Reading } from '../drawing/figure.ts'
import type { At, Mark } from '../drawing/mark.ts'
import { pointMark } from '../drawing/pointShape.ts'
import { wrappedText } from '../drawing/textWidth.ts'

/** One row: what stands above it, its value with the interval about it, and what is said of it. */
export type PlotRow = {
  name: string
  value: number
  /** null: there is no interval. */
  low: number | null
  high: number | null
  /** Drawn as an outline only. */
  hollow: boolean
  words: string
}

export type RowPlot = {
  title: string
  description: string
  rows: readonly PlotRow[]
  x: Axis
  xTitle: string
  /** A line down that the values are held against; null: none. */
  heldAgainst: number | null
  keys: readonly Key[]
}

const nameEm = 1.3
const rowEm = 1.5

/** Values with their intervals in rows, one below the other, each under its name. */
export function rowPlot(plot: RowPlot, size: FigureSize): Figure {
  const { widthPx, emPx: em } = size
  const rows = plot.rows.map((row) => {
    const names = wrappedText(row.name, widthPx - 3 * em, em)
    return { row, names, heightPx: (nameEm * names.length + rowEm) * em }
  })
  const height = rows.reduce((sum, { heightPx }) => sum + heightPx, 0)
  const y: Axis = { from: 0, to: 1, ticks: [] }
  const parts = { x: plot.x, y, xTitle: plot.xTitle, yTitle: '', heightEm: height / em + 4.2 }
  const [frame, axes] = framed(parts, size)
  const { top, bottom, left, atX } = frame
  const down = (value: number, ink: 'grid' | 'zero'): Mark => ({
    ...{ kind: 'rule', ink },
    from: { x: atX(value), y: top },
    to: { x: atX(value), y: bottom },
  })
  const marks: Mark[] = plot.x.ticks.map(({ value }) => down(value, 'grid'))
  if (plot.heldAgainst !== null) marks.push(down(plot.heldAgainst, 'zero'))
  const readings: Reading[] = []
  let from = top
  for (const { row, names, heightPx } of rows) {
    for (const [line, text] of names.entries())
      marks.push({ kind: 'text', ink: 'label', x: left, y: from + (1 + nameEm * line) * em, text, anchor: 'start' })
    const at = { x: atX(row.value), y: from + heightPx - (rowEm / 2) * em }
    const span = row.low === null || row.high === null ? [] : spanMarks(atX(row.low), atX(row.high), at.y, em)
    marks.push({ kind: 'named', words: row.words, marks: [...span, rowSign(row.hollow, at, em)] })
    readings.push({ ...at, words: row.words })
    from += heightPx
  }
  const [keysPx, keyMarks] = keyRows(plot.keys, frame.heightPx, widthPx, em)
  const { title, description } = plot
  return {
    ...size,
    heightPx: frame.heightPx + keysPx,
    title,
    description,
    marks: [...axes, ...marks, ...keyMarks],
    readings,
  }
}

/** The sign of a row's value. */
export function rowSign(hollow: boolean, at: At, em: number): Mark {
  return pointMark('diamond', at, em / 12.5, hollow)
}

/** A line from one end of an interval to the other, with caps. */
export function spanMarks(from: number, to: number, y: number, em: number): Mark[] {
  const cap = (x: number): Mark => ({
    ...{ kind: 'rule', ink: 'spread' },
    from: { x, y: y - 0.35 * em },
    to: { x, y: y + 0.35 * em },
  })
  return [{ kind: 'rule', ink: 'spread', from: { x: from, y }, to: { x: to, y } }, cap(from), cap(to)]
}

/** What a span stands for, as a key. */
export function spanKey(name: string, em: number): Key {
  return { name, sign: ({ x, y }) => spanMarks(x - 0.5 * em, x + 0.4 * em, y, em) }
}
