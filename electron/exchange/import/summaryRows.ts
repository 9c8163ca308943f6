import type { Cell, SheetRow } from '../sheets/sheet.ts'

/** What people write before a row that sums up those above it, alone or with a word behind it: "Mean", "SD (n-1)", "CV %", "Average of 8". */
const sumsUp =
  /^(?:means?|averages?|avg|totals?|grand total|sub-?total|sums?|medians?|s\.?d\.?|st\.? ?dev|std\.?(?: ?dev)?|standard deviation|c\.?o?\.?v\.?|coefficient of variation|[øØσΣ])(?:\s*[:=.]|\s*[([%].*|\s+of\b.*|\s+values?)?$/i
/** What may as well be the name of a block or of a person, and sums up beside such a row alone. */
const mayName = /^(?:n|count|no\.? of .+|number of .+|min(?:imum)?|max(?:imum)?|range)(?:\s*[:=.].*)?$/i

const longest = 80

/**
 * The rows that sum up others and are no blocks, by their numbers, each with the words that say so: what stands first in it, or in
 * one of the columns that name a block or its adhesive.
 */
export function summaryRows(rows: readonly SheetRow[], naming: readonly number[]): Map<number, string> {
  const found = new Map<number, string>()
  let weak: { row: number; words: string }[] = []
  let isBeside = false
  for (const { row, cells } of rows) {
    const words = namesIn(cells, naming)
    const strong = words.find((text) => sumsUp.test(text))
    const maybe = strong ?? words.find((text) => mayName.test(text))
    if (maybe === undefined) {
      weak = []
      isBeside = false
      continue
    }
    weak.push({ row, words: maybe })
    isBeside ||= strong !== undefined
    if (!isBeside) continue
    for (const one of weak) found.set(one.row, one.words)
    weak = []
  }
  return found
}

/** The texts that may say what a row is: the first of it, and those in the columns of names. */
function namesIn(cells: readonly (Cell | undefined)[], naming: readonly number[]): string[] {
  const first = Object.values(cells).find((cell) => cell !== undefined && cell.kind !== 'empty')
  return [first, ...naming.map((column) => cells[column])].flatMap((cell) =>
    cell?.kind === 'text' && cell.text.length <= longest ? [cell.text.trim()] : [],
  )
}
