import { conditionKey } from '#domain/findings/askedBlocks.ts'
import { ageHead, ageHeadsTitle } from '#words/findings/overviewWords.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { lineEm, strideOf } from '../../axes/frame.ts'
import type { FigureSize } from '../../drawing/figure.ts'
import type { Mark } from '../../drawing/mark.ts'
import { textWidth, wrappedText } from '../../drawing/textWidth.ts'
import { conditionsOf, type Panel, type Placed, panelLines } from './panels.ts'

/** A place of the matrix, in pixels. */
export type Box = { x: number; y: number; width: number; height: number }

export type MatrixSizes = {
  /** Stands above all; '': nothing does. */
  heading: string
  /** The width of a place where there is room, the height of a row, and room for values beside the rows, in heights of the text. */
  cellEm: number
  /** The width below which a place is not made narrower: the figure grows wider than its page. */
  leastEm: number
  rowEm: number
  besideEm: number
  /** A height to be filled and not exceeded; null: as high as the rows make it. */
  heightPx: number | null
}

export type Matrix = {
  widthPx: number
  heightPx: number
  /** The place of each group, in the order of the groups; of two with the same traits both have the same. */
  places: Box[]
  /** The rows of each condition; `outer`: nothing stands left of it in its line. */
  strips: (Box & { outer: boolean })[]
  /** Names, heads and rules. */
  marks: Mark[]
}

const gapEm = 1.2
/** The least room for the head of a condition. */
const headEm = 5.5
const leastRowEm = 1.6

/** Adhesives in rows; conditions side by side, their ages beside each other, in further lines where a page is too narrow. */
export function matrixOf(
  groups: readonly Placed[],
  lengths: Pick<Quantities, 'length'>,
  sizes: MatrixSizes,
  size: FigureSize,
): Matrix {
  const { emPx: em } = size
  const adhesives = [...new Set(groups.map(({ adhesive }) => adhesive))]
  const { shared, conditions } = conditionsOf(groups, lengths)
  const widest = [...adhesives, ageHeadsTitle].reduce((most, name) => Math.max(most, textWidth(name, em)), 0)
  const namesPx = Math.min(widest, 11 * em, 0.28 * size.widthPx)
  const from = namesPx + (0.6 + sizes.besideEm) * em
  const needOf = (ages: number) => Math.max(ages * sizes.cellEm, headEm) * em
  const mostAges = conditions.reduce((most, { ages }) => Math.max(most, ages.length), 1)
  const leastPx = Math.max(mostAges * sizes.leastEm, headEm) * em
  const widthPx = Math.max(size.widthPx, from + leastPx + 0.5 * em)
  const room = { from, widthPx: widthPx - from - 0.5 * em, gapPx: gapEm * em }
  const lines = panelLines(conditions, needOf, room)
  const sharedLines = [sizes.heading, shared].flatMap((text) => (text === '' ? [] : wrappedText(text, widthPx, em)))
  const heads = lines.map((line) => headLinesOf(line, em))
  const headPx = (at: number) => (heads[at]!.most * lineEm + 1.7) * em
  const sharedPx = sharedLines.length * lineEm * em
  const fixedPx = lines.reduce((sum, _, at) => sum + headPx(at) + em, sharedPx)
  const rowPx = rowHeight(sizes, (sizes.heightPx ?? 0) - fixedPx, Math.max(adhesives.length * lines.length, 1), em)

  const boxes = new Map<string, Box>()
  const strips: Matrix['strips'] = []
  const marks: Mark[] = textLines(sharedLines, 0, em)
  let top = sharedPx
  for (const [at, line] of lines.entries()) {
    marks.push(...headMarks(line, heads[at]!.lines, top + headPx(at), em))
    top += headPx(at)
    for (const [row, adhesive] of adhesives.entries()) {
      const y = top + row * rowPx
      marks.push(...nameMarks(adhesive, { y, rowPx, namesPx }, em))
      for (const [place, panel] of line.entries()) {
        strips.push({ x: panel.x, y, width: panel.width, height: rowPx, outer: place === 0 })
        const width = panel.width / panel.ages.length
        for (const [column, age] of panel.ages.entries())
          boxes.set(placeKey(adhesive, panel.key, age), { x: panel.x + column * width, y, width, height: rowPx })
      }
    }
    marks.push(...rules(line, top, rowPx, adhesives.length))
    top += adhesives.length * rowPx + em
  }
  const places = groups.map((group) => boxes.get(placeKey(group.adhesive, conditionKey(group), group.ageMonths))!)
  return { widthPx, heightPx: top, places, strips, marks }
}

const placeKey = (adhesive: string, condition: string, age: number | null) => `${age} ${condition} ${adhesive}`

function rowHeight({ rowEm, heightPx }: MatrixSizes, freePx: number, rows: number, em: number): number {
  if (heightPx === null) return rowEm * em
  return Math.max(Math.min(freePx / rows, 2 * rowEm * em), leastRowEm * em)
}

/** Heads wrapped into the width of their panels, and how many lines the highest has. */
function headLinesOf(line: readonly Panel[], em: number): { lines: string[][]; most: number } {
  const lines = line.map(({ head, width }) => wrappedText(head, width, em))
  return { lines, most: lines.reduce((most, one) => Math.max(most, one.length), 1) }
}

function headMarks(line: readonly Panel[], heads: readonly string[][], bottom: number, em: number): Mark[] {
  const baseline = bottom - 0.5 * em
  const marks: Mark[] = [{ kind: 'text', ink: 'tick', x: 0, y: baseline, text: ageHeadsTitle, anchor: 'start' }]
  for (const [at, { ages, x, width }] of line.entries()) {
    const lines = heads[at]!
    const first = baseline - lines.length * lineEm * em
    for (const [row, text] of lines.entries())
      marks.push({ kind: 'text', ink: 'title', x, y: first + row * lineEm * em, text, anchor: 'start' })
    const cell = width / ages.length
    const labels = ages.map((age, column) => {
      const text = ageHead(age)
      return { text, x: x + (column + 0.5) * cell, width: textWidth(text, em) }
    })
    const every = strideOf(labels, 0.3 * em)
    for (const [column, label] of labels.entries())
      if (column % every === 0)
        marks.push({ kind: 'text', ink: 'tick', x: label.x, y: baseline, text: label.text, anchor: 'middle' })
  }
  return marks
}

/** A name in as many lines as its row holds; what does not fit is shortened. */
function nameMarks(
  name: string,
  { y, rowPx, namesPx }: { y: number; rowPx: number; namesPx: number },
  em: number,
): Mark[] {
  const all = wrappedText(name, namesPx, em)
  const lines = all.slice(0, Math.max(Math.floor((rowPx - 0.2 * em) / (lineEm * em)), 1))
  if (lines.length < all.length) lines.push(shortened(lines.pop()!, namesPx, em))
  const first = y + rowPx / 2 - ((lines.length - 1) / 2) * lineEm * em + 0.35 * em
  return lines.map((text, line): Mark => {
    return { kind: 'text', ink: 'label', x: 0, y: first + line * lineEm * em, text, anchor: 'start' }
  })
}

function shortened(text: string, widthPx: number, em: number): string {
  const letters = [...text]
  while (letters.length > 0 && textWidth(`${letters.join('')}…`, em) > widthPx) letters.pop()
  return `${letters.join('').trimEnd()}…`
}

function textLines(lines: readonly string[], top: number, em: number): Mark[] {
  return lines.map((text, line): Mark => {
    return { kind: 'text', ink: 'title', x: 0, y: top + (1 + line * lineEm) * em, text, anchor: 'start' }
  })
}

/** Rules between rows and between ages, as one form. */
function rules(line: readonly Panel[], top: number, rowPx: number, rows: number): Mark[] {
  const bottom = top + rows * rowPx
  const at = (value: number) => Math.round(value * 100) / 100
  const across = line.flatMap(({ x, width }) =>
    Array.from({ length: rows + 1 }, (_, row) => `M${at(x)} ${at(top + row * rowPx)}H${at(x + width)}`),
  )
  const down = line.flatMap(({ x, width, ages }) =>
    Array.from(
      { length: ages.length + 1 },
      (_, column) => `M${at(x + (column * width) / ages.length)} ${at(top)}V${at(bottom)}`,
    ),
  )
  return [{ kind: 'path', ink: 'grid', d: [...across, ...down].join('') }]
}
