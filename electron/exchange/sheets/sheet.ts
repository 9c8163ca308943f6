/** One cell that holds something, or is coloured in a row that does. */
export type Cell = {
  /**
   * What it is: `time` is a time of day or a span; `unstored` a formula of which no value was kept; `error` the result of a
   * formula that failed; `empty` holds nothing but its colour.
   */
  readonly kind: 'text' | 'number' | 'date' | 'time' | 'truth' | 'error' | 'unstored' | 'empty'
  /** As a sheet program shows it, as far as that can be told; of a date its ISO form, '' where there is no such day. */
  readonly text: string
  /** null for everything but `number`. */
  readonly number: number | null
  /** What the format of a number writes behind it: '%', or the text of a unit; '' for nothing. */
  readonly unit: string
  /** Of a date that has a time of day: the seconds that have passed of it. */
  readonly secondOfDay?: number
  readonly formula: boolean
  readonly fill: Fill
}

/**
 * The background colour of a cell: six hexadecimal digits in capitals, the name of a theme colour (`theme 4`, `theme 4 +0.60`
 * with its tint), or `pattern` for a hatching; null: none.
 */
export type Fill = string | null

/**
 * A row that holds something; `row` is the number that a sheet program shows before it, `cells` stand at their columns from 0;
 * `hidden`: the program does not show it, by hand or by a filter.
 */
export type SheetRow = {
  readonly row: number
  readonly cells: readonly (Cell | undefined)[]
  readonly hidden?: boolean
}

/** A sheet as it was read, whatever kind of file it came from. */
export type Sheet = {
  /** null: the file is one table without a name. */
  readonly name: string | null
  /** Only rows that hold something, from the top. */
  readonly rows: readonly SheetRow[]
  /** The last row that the file speaks of, empty rows with a format included. */
  readonly lastRow: number
  /** How the file parts its fields, and in which characters it was written; null where the kind of file leaves no choice. */
  readonly text: { readonly delimiter: string; readonly encoding: string } | null
}

/** A file of sheets: the names of all of them, in order, and the one that was read. */
export type SheetFile = { readonly sheets: readonly { name: string; hidden: boolean }[]; readonly sheet: Sheet }

/** A cell of a file that knows nothing but text. */
export function textCell(text: string): Cell {
  return { kind: 'text', text, number: null, unit: '', formula: false, fill: null }
}

/** The letters over a column (0 is A). */
export function columnLetters(column: number): string {
  let letters = ''
  for (let rest = column + 1; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters
  return letters
}

/** No sheet program shows more columns: XFD is the last. */
export const mostColumns = 16_384
/** The last row of a sheet program. */
export const mostRows = 1_048_576

/** The column (from 0) over which these letters stand; null: they are no such letters. */
export function columnOfLetters(letters: string): number | null {
  if (!/^[A-Za-z]{1,3}$/.test(letters)) return null
  let column = 0
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64
  return column > mostColumns ? null : column - 1
}
