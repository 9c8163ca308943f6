// Held by tests/exchange/csv/sheetCsv.spec.ts.
import type { Options } from 'csv-parse'

/** Longer than any honest row; an unclosed quote is given up there instead of filling the memory. */
export const mostCharactersOfRow = 1_000_000

/**
 * How tables that people keep are read: lines end in LF, CRLF or CR; a quote within a field, as in 6" lap, is a character like
 * any other; rows may be of unequal length, empty ones count, and a line with # is one like any other.
 */
export function tableOptions(delimiter: string): Options {
  return {
    delimiter,
    record_delimiter: ['\r\n', '\n', '\r'],
    relax_quotes: true,
    relax_column_count: true,
    skip_empty_lines: false,
    max_record_size: mostCharactersOfRow,
    bom: false,
  }
}
