import { CsvError, parse } from 'csv-parse'
import { Trouble } from '#contract/errors.ts'
import type { Delimiter, TextEncoding } from '#contract/specimens/importMapping.ts'
import { type Cell, mostColumns, type Sheet, type SheetRow, textCell } from '../sheets/sheet.ts'
import { foundDelimiter } from './foundDelimiter.ts'
import { tableOptions } from './tableOptions.ts'
import { tableText } from './textEncoding.ts'

/** How a table of text is laid out, as far as the person said so; null: found from the file. `headerRow` 0: it has no headings. */
export type TextLayout = { delimiter: Delimiter | null; encoding: TextEncoding | null; headerRow: number }

/** What is read between two looks at whether it is still wanted. */
const pieceBytes = 262_144

/** Hears every row of a table of text, with the number that a sheet program shows before it, and how many bytes are read. */
export type CsvListener = {
  row(row: number, fields: readonly string[]): void
  read?(done: number, total: number): void
}

/**
 * Reads a table of text row by row, as `readSheetCsv` reads it, without keeping the rows; says how many there are. Rejects with
 * Trouble `not-readable` for what is no text, and for a quote that is never closed, which is named where it opens.
 */
export async function eachCsvRow(
  file: string,
  bytes: Buffer,
  said: TextLayout,
  listener: CsvListener,
  signal?: AbortSignal,
): Promise<{ lastRow: number; delimiter: string; encoding: string }> {
  const { start, encoding, utf8 } = tableText(file, bytes, said.encoding)
  const delimiter = said.delimiter ?? foundDelimiter(start, said.headerRow)
  let lastRow = 0
  const parser = parse({
    ...tableOptions(delimiter),
    on_record(fields: string[]) {
      lastRow++
      if (fields.length > mostColumns) throw tooManyFields(file, lastRow)
      listener.row(lastRow, fields)
      return null
    },
  })
  // Whoever waits for a piece is told of its error; the parser tells it once more, when nobody waits any longer
  parser.on('error', () => {})
  try {
    // As bytes: a piece of text could end within a pair of surrogates
    for (let from = 0; from < utf8.length; from += pieceBytes) {
      // Whoever wants to stop it must find a turn to say so
      await new Promise((resolve) => setImmediate(resolve))
      signal?.throwIfAborted()
      listener.read?.(from, utf8.length)
      await pushed((done) => parser.write(utf8.subarray(from, from + pieceBytes), done))
    }
    await pushed((done) => parser.end(done))
  } catch (thrown) {
    throw unreadableRow(file, lastRow + 1, thrown)
  }
  return { lastRow, delimiter, encoding }

  function pushed(push: (done: (error?: Error | null) => void) => void): Promise<void> {
    return new Promise((resolve, reject) => {
      parser.once('error', reject)
      push((error) => {
        parser.off('error', reject)
        if (error == null) resolve()
        else reject(error)
      })
    })
  }
}

/** Reads a table of text that people keep; rows are counted as a sheet program shows them. Rejects as `eachCsvRow`. */
export async function readSheetCsv(
  file: string,
  bytes: Buffer,
  said: TextLayout,
  signal?: AbortSignal,
): Promise<Sheet> {
  const rows: SheetRow[] = []
  const row = (row: number, fields: readonly string[]) => {
    const cells = cellsOf(fields)
    if (cells !== null) rows.push({ row, cells })
  }
  const { lastRow, delimiter, encoding } = await eachCsvRow(file, bytes, said, { row }, signal)
  return { name: null, rows, lastRow, text: { delimiter, encoding } }
}

/** The cells of a row; null: nothing stands in it. */
function cellsOf(fields: readonly string[]): (Cell | undefined)[] | null {
  const cells: (Cell | undefined)[] = []
  for (let column = 0; column < fields.length; column++)
    if (fields[column]!.trim() !== '') cells[column] = textCell(fields[column]!)
  return cells.length === 0 ? null : cells
}

const tooManyFields = (file: string, row: number) =>
  new Trouble(
    'not-readable',
    `${file}, row ${row}: the row has more fields than any sheet has columns.`,
    'Check what parts the fields of the file.',
  )

function unreadableRow(file: string, row: number, thrown: unknown): unknown {
  if (!(thrown instanceof CsvError)) return thrown
  const open = thrown.code === 'CSV_QUOTE_NOT_CLOSED' || thrown.code === 'CSV_MAX_RECORD_SIZE'
  return new Trouble(
    'not-readable',
    open
      ? `${file}, row ${row}: a quote opens in this row and is not closed.`
      : `${file}, row ${row}: the row cannot be read (${thrown.message}).`,
    'Close the quote, or write it twice where it is a part of the text.',
  )
}
