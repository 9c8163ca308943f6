// Held by tests/exchange/csv/sheetCsv.spec.ts.
import { parse } from 'csv-parse/sync'
import type { Delimiter } from '#contract/specimens/importMapping.ts'
import { tableOptions } from './tableOptions.ts'

const candidates: readonly Delimiter[] = [',', ';', '\t']

/** So much of a file shows how its fields are parted. */
const lookedCharacters = 65_536
const lookedRows = 50

/**
 * What parts the fields of a table: of comma, semicolon and tab the one that parts the row of headings and gives the most rows
 * equally many fields. A comma that parts rows but no headings is a decimal sign.
 */
export function foundDelimiter(text: string, headerRow: number): Delimiter {
  const start = text.slice(0, lookedCharacters)
  const whole =
    start.length < text.length ? start.slice(0, Math.max(start.lastIndexOf('\n'), start.lastIndexOf('\r'), 0)) : start
  let best: { delimiter: Delimiter; share: number; fields: number } = { delimiter: ',', share: 0, fields: 0 }
  for (const delimiter of candidates) {
    const { share, fields } = evenness(fieldCounts(whole, delimiter), headerRow)
    if (share > best.share || (share === best.share && fields > best.fields)) best = { delimiter, share, fields }
  }
  return best.delimiter
}

function fieldCounts(text: string, delimiter: Delimiter): number[] {
  const counts: number[] = []
  try {
    const count = (fields: string[]) => {
      counts.push(fields.length)
      return null
    }
    parse(text, { ...tableOptions(delimiter), to: lookedRows, on_record: count })
  } catch {
    // A quote that is not closed under this delimiter says so when the file is read with it; the rows before it count
  }
  return counts
}

function evenness(counts: readonly number[], headerRow: number): { share: number; fields: number } {
  const parted = counts.filter((count) => count > 1)
  const heading = headerRow === 0 ? parted[0] : counts[headerRow - 1]
  if (heading === undefined || heading < 2) return { share: 0, fields: 0 }
  const rows = counts.slice(Math.max(headerRow - 1, 0))
  return { share: rows.filter((count) => count === heading).length / rows.length, fields: heading }
}
