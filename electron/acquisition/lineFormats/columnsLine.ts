// Held by tests/acquisition/lineFormats/lineParser.spec.ts.
import type { ColumnName } from '#contract/bench/source.ts'
import { Trouble } from '#contract/errors.ts'
import { type ScannedNumber, scanDecimal } from './decimalNumber.ts'
import { afterBlanks, isBlank, type LineDecoder, lineEndAt, lineFeed } from './lineDecoder.ts'

const microseconds: Partial<Record<ColumnName, number>> = { time_us: 1, time_ms: 1e3, time_s: 1e6 }

function checkColumns(columns: readonly ColumnName[]): void {
  const readings = columns.filter((column) => column === 'counts' || column === 'force_N').length
  const times = columns.filter((column) => microseconds[column] !== undefined).length
  const sequences = columns.filter((column) => column === 'seq').length
  if (readings !== 1 || times > 1 || sequences > 1)
    throw new Trouble(
      'invalid-input',
      `The columns "${columns.join(',')}" do not say which one is the reading.`,
      'Name exactly one column counts or force_N, at most one time and one seq, and "-" for every other, e.g. time_us,counts.',
    )
}

function isDelimiter(byte: number): boolean {
  return byte === 44 || byte === 59
}

function afterField(bytes: Uint8Array, from: number): number {
  let i = from
  while (bytes[i] !== lineFeed && !isDelimiter(bytes[i]!) && !isBlank(bytes[i]!)) i += 1
  return i
}

/**
 * `columns`: as many fields as columns, split by commas, semicolons, tabs or spaces (blanks around a comma or semicolon
 * belong to it). Throws a Trouble when the columns do not name exactly one reading.
 */
export function createColumnsDecoder(columns: readonly ColumnName[]): LineDecoder {
  checkColumns(columns)
  const found: ScannedNumber = { value: 0, next: 0, whole: true }

  function take(column: ColumnName): boolean {
    if (column === 'counts' || column === 'force_N') decoder.value = found.value
    else if (column === 'seq') {
      if (!found.whole || found.value < 0) return false
      decoder.sequence = found.value
    } else {
      decoder.deviceTimeUs = found.value * microseconds[column]!
      return Math.abs(decoder.deviceTimeUs) <= Number.MAX_SAFE_INTEGER
    }
    return true
  }

  const decoder: LineDecoder = {
    value: 0,
    deviceTimeUs: Number.NaN,
    sequence: Number.NaN,
    unit: columns.includes('force_N') ? 'N' : 'counts',
    decode(bytes, from) {
      let i = afterBlanks(bytes, from)
      const last = columns.length - 1
      for (let field = 0; field <= last; field++) {
        const column = columns[field]!
        if (column === '-') i = afterField(bytes, i)
        else {
          if (!scanDecimal(bytes, i, found)) return -1
          i = found.next
          if (!take(column)) return -1
        }
        if (field === last) break
        const fieldEnd = i
        i = afterBlanks(bytes, i)
        if (isDelimiter(bytes[i]!)) i = afterBlanks(bytes, i + 1)
        else if (i === fieldEnd || bytes[i] === lineFeed) return -1
      }
      return lineEndAt(bytes, i)
    },
  }
  return decoder
}
