import type { ColumnName } from '#contract/specimens/importMapping.ts'
import { delimiter, textEncoding } from '#contract/specimens/importMapping.ts'
import type { SheetCell, SheetColumn, SheetView } from '#contract/specimens/sheetView.ts'
import { readTypedNumber } from '#domain/units/typedNumber.ts'
import { type Cell, columnLetters, type Fill, type Sheet, type SheetFile, type SheetRow } from '../sheets/sheet.ts'
import { headingMeaning } from './headingMeaning.ts'
import { proposeMapping } from './proposeMapping.ts'

/** So much of a sheet is shown; a mapping reaches all of it. */
const mostRowsShown = 60
const mostColumnsShown = 300
const mostCharactersShown = 200
/** Headings stand among the first rows that hold something. */
const rowsOfHead = 20

/**
 * A sheet as the page of the import shows it. `headerRow` null: where the headings stand is found. Rejects with the reason of the
 * signal where it is stopped.
 */
export async function lookAtSheet(
  { sheets, sheet }: SheetFile,
  headerRow: number | null,
  fileSha256: string,
  signal?: AbortSignal,
): Promise<SheetView> {
  const header = headerRow ?? foundHeaderRow(sheet.rows)
  const below = sheet.rows.filter(({ row }) => row > header)
  const { fills, ...counts } = await tallyOf(below, signal)
  const columns = columnsOf(sheet, header, fills)
  const text = sheet.text === null ? null : textOf(sheet.text)
  return {
    ...{ fileSha256, sheets: [...sheets], sheet: sheet.name, text, headerRow: header, columns },
    rows: shownRows(sheet.rows, columns.length),
    hiddenRows: below.filter(({ hidden }) => hidden === true).length,
    ...{ filledRows: below.length, emptyRows: Math.max(sheet.lastRow - header, 0) - below.length, ...counts },
    proposed: proposeMapping(sheet, header, columns),
  }
}

function textOf({ delimiter: parts, encoding }: NonNullable<Sheet['text']>): NonNullable<SheetView['text']> {
  return { delimiter: delimiter.parse(parts), encoding: textEncoding.parse(encoding) }
}

/** The row whose cells say the most as headings; else the first of texts alone; 0: there is none. */
function foundHeaderRow(rows: readonly SheetRow[]): number {
  let best = { row: 0, told: 0 }
  for (const { row, cells } of rows.slice(0, rowsOfHead)) {
    const texts = Object.values(cells).flatMap((cell) => (cell === undefined ? [] : [cell.text]))
    const told = texts.length < 2 ? 0 : texts.filter((text) => headingMeaning(text).field !== null).length
    if (told > best.told) best = { row, told }
  }
  if (best.told > 0) return best.row
  const [first] = rows
  const words =
    first === undefined ? [] : Object.values(first.cells).flatMap((cell) => (cell === undefined ? [] : [cell]))
  return first !== undefined &&
    words.every((cell) => cell.kind === 'text' && readTypedNumber(cell.text).kind !== 'number')
    ? first.row
    : 0
}

type FillCounts = Map<Fill, number>

function columnsOf(sheet: Sheet, headerRow: number, fills: readonly (FillCounts | undefined)[]): SheetColumn[] {
  const headings = sheet.rows.find(({ row }) => row === headerRow)?.cells ?? []
  const widest = sheet.rows.reduce((most, { cells }) => Math.max(most, cells.length), 0)
  const texts = Array.from({ length: Math.min(widest, mostColumnsShown) }, (_, column) =>
    plain(headings[column]?.text ?? ''),
  )
  return texts.map((heading, column) => {
    const byCount = [...(fills[column] ?? [])]
      .map(([fill, count]) => ({ fill, count }))
      .toSorted((a, b) => b.count - a.count)
    const filled = byCount.reduce((sum, { count }) => sum + count, 0)
    const letters = columnLetters(column)
    return { letters, heading: cut(heading), name: nameOf(column, texts), filled, fills: byCount }
  })
}

const longestName = 200
/** What is longer is no heading that a mapping could name. */
const longestLooked = 1000
const plain = (text: string) => text.replaceAll(/\s+/g, ' ').trim().slice(0, longestLooked)
const cut = (text: string) => (text.length > mostCharactersShown ? `${text.slice(0, mostCharactersShown)}…` : text)

/** How a mapping names a column so that no other is meant: its heading, else its letters, else its number. */
function nameOf(column: number, headings: readonly string[]): ColumnName {
  const named = (name: string) => headings.filter((heading) => heading.toLowerCase() === name.toLowerCase()).length
  const heading = headings[column]!
  if (heading !== '' && heading.length <= longestName && heading.isWellFormed() && named(heading) === 1) return heading
  const letters = columnLetters(column)
  return named(letters) === 0 ? letters : column + 1
}

type Tally = { merged: number; formulas: number; errors: number; fills: (FillCounts | undefined)[] }

/** Rows between two turns for everybody else. */
const rowsAtOnce = 500

/** What stands in all cells below the headings. */
async function tallyOf(rows: readonly SheetRow[], signal: AbortSignal | undefined): Promise<Tally> {
  const tally: Tally = { merged: 0, formulas: 0, errors: 0, fills: [] }
  for (const [place, { cells }] of rows.entries()) {
    const above = rows[place - 1]?.cells
    // By the cells that there are: a lone one far to the right has ten thousand holes before it
    for (const key in cells) {
      const column = Number(key)
      const cell = cells[column]
      if (cell === undefined || cell.kind === 'empty') continue
      if (isMerged(cell, above?.[column])) tally.merged++
      if (cell.formula) tally.formulas++
      if (cell.kind === 'error' || cell.kind === 'unstored') tally.errors++
      if (column >= mostColumnsShown) continue
      tally.fills[column] ??= new Map()
      const fills = tally.fills[column]
      fills.set(cell.fill, (fills.get(cell.fill) ?? 0) + 1)
    }
    if (place % rowsAtOnce === rowsAtOnce - 1) {
      await new Promise((resolve) => setImmediate(resolve))
      signal?.throwIfAborted()
    }
  }
  return tally
}

/** A merged cell is one and the same in every row that it covers. */
const isMerged = (cell: Cell, above: Cell | undefined) => cell === above

function shownRows(rows: readonly SheetRow[], width: number): SheetView['rows'] {
  return rows.slice(0, mostRowsShown).map(({ row, cells }, place) => ({
    row,
    cells: Array.from({ length: Math.min(width, cells.length) }, (_, column) => {
      const cell = cells[column]
      return cell === undefined ? null : shownCell(cell, isMerged(cell, rows[place - 1]?.cells[column]))
    }),
  }))
}

function shownCell({ text, kind, fill, formula }: Cell, merged: boolean): SheetCell {
  return { text: cut(text), kind, fill, formula, merged }
}
