import { Trouble } from '#contract/errors.ts'
import { type Cell, columnOfLetters, type SheetRow } from './sheet.ts'

/** Cells that were joined to one: from row to row, in the column of its value (from 0). */
export type Merge = { firstRow: number; lastRow: number; column: number }

const mostSteps = 5_000_000

/** Reads a range such as B2:C5; null: it covers one row alone, or is no range. */
export function readMerge(range: string): Merge | null {
  const [, letters = '', first, last] = /^([A-Z]+)(\d+):[A-Z]+(\d+)$/i.exec(range) ?? []
  const column = columnOfLetters(letters)
  const [firstRow, lastRow] = [Number(first), Number(last)]
  return column === null || !(lastRow > firstRow) ? null : { firstRow, lastRow, column }
}

/**
 * Gives the value of each merged cell to every row that it covers, in the column where the value stands; a row that holds nothing
 * else stays empty. Throws Trouble `not-readable` where the ranges overlap without end.
 */
export function applyMerges(file: string, rows: readonly SheetRow[], merges: readonly Merge[]): SheetRow[] {
  if (merges.length === 0) return [...rows]
  const places = new Map(rows.map(({ row }, place) => [row, place]))
  const filled = [...rows]
  const copied = new Set<number>()
  let steps = 0
  for (const { firstRow, lastRow, column } of merges) {
    const from = places.get(firstRow)
    const value: Cell | undefined = from === undefined ? undefined : rows[from]!.cells[column]
    if (from === undefined || value === undefined) continue
    for (let place = from + 1; place < filled.length && filled[place]!.row <= lastRow; place++) {
      if (++steps > mostSteps)
        throw new Trouble(
          'not-readable',
          `${file}: the merged cells of the sheet cover one another.`,
          'Undo the merging in a sheet program, and save the sheet again.',
        )
      const { cells } = filled[place]!
      const own = copied.has(place) ? (cells as (Cell | undefined)[]) : cells.slice()
      own[column] = value
      filled[place] = { ...filled[place]!, cells: own }
      copied.add(place)
    }
  }
  return filled
}
