// Held by tests/exchange/climate/readLogger.spec.ts.
import type { ClimateMapping } from '#contract/findings/climate.ts'
import { eachCsvRow, readSheetCsv, type TextLayout } from '../csv/sheetCsv.ts'
import { readSheetFile } from '../sheets/readSheetFile.ts'
import { type Cell, type SheetRow, textCell } from '../sheets/sheet.ts'

/** A row as it is handed on: the number that a sheet program shows, and its cells by column. */
export type LoggerRowListener = (row: number, cellAt: (column: number) => Cell | null) => void

/** A file of a logger whose rows come one after the other: of a table of text no more than the first are kept. */
export type LoggerTable = {
  readonly sheets: readonly string[]
  readonly sheet: string | null
  /** What parts the fields of a table of text; null: the file is none. */
  readonly delimiter: string | null
  /** The first rows that hold something. */
  readonly head: readonly SheetRow[]
  /** Rows below the headings that hold something, with how far the reading is. */
  each(listener: LoggerRowListener, onProgress: (done: number, total: number) => void): Promise<void>
}

export type LoggerLayout = Pick<ClimateMapping, 'sheet' | 'headerRow' | 'delimiter' | 'encoding'>

/** So much of a file shows what its columns hold. */
const headBytes = 262_144
const headRows = 3000
const packed = Buffer.from('PK', 'latin1')

/** Opens a file of sheets or of text. Rejects with a Trouble that names the file. */
export async function openLogger(
  file: string,
  bytes: Buffer,
  { sheet = undefined, headerRow, delimiter, encoding }: LoggerLayout,
  signal?: AbortSignal,
): Promise<LoggerTable> {
  const layout: TextLayout = { headerRow, delimiter: delimiter ?? null, encoding: encoding ?? null }
  if (bytes.subarray(0, 2).equals(packed) || bytes.length <= headBytes) {
    const read = await readSheetFile(file, bytes, { sheet: sheet ?? null, ...layout }, signal)
    const { rows, text, name } = read.sheet
    return {
      sheets: read.sheets.filter(({ hidden }) => !hidden).map((one) => one.name),
      ...{ sheet: name, delimiter: text?.delimiter ?? null, head: rows.slice(0, headRows) },
      async each(listener, onProgress) {
        for (const [i, { row, cells }] of rows.entries()) {
          if (i % 10_000 === 0) onProgress(i, rows.length)
          if (row > headerRow) listener(row, (column) => cells[column] ?? null)
        }
      },
    }
  }
  const cut = bytes.lastIndexOf('\n', headBytes)
  const start = await readSheetCsv(
    file,
    bytes.subarray(0, cut > 0 ? cut + (bytes[cut + 1] === 0 ? 2 : 1) : headBytes),
    layout,
    signal,
  )
  return {
    ...{ sheets: [], sheet: null, delimiter: start.text!.delimiter, head: start.rows.slice(0, headRows) },
    async each(listener, onProgress) {
      const cellOf = (fields: readonly string[], column: number) => {
        const text = fields[column] ?? ''
        return text.trim() === '' ? null : textCell(text)
      }
      const row = (number: number, fields: readonly string[]) => {
        if (number > headerRow && fields.some((text) => text.trim() !== ''))
          listener(number, (column) => cellOf(fields, column))
      }
      const said = { ...layout, delimiter: start.text!.delimiter as TextLayout['delimiter'] }
      await eachCsvRow(file, bytes, said, { row, read: onProgress }, signal)
    },
  }
}
