import { Trouble } from '#contract/errors.ts'
import { plainNumber } from '#contract/plainNumber.ts'
import { type GrowingColumn, growingColumn } from '#domain/numbers/growingColumn.ts'
import { csvRecords, noNumber } from './csvRecords.ts'

/** The value columns that a curve file may have. */
const valueColumns = ['force_N', 'force_lbf', 'counts'] as const
export type ValueColumn = (typeof valueColumns)[number]

/** What may stand beside the values: the displacement of the press, measured along with them. */
const displacementColumn = 'displacement_mm'

/** A curve file as read: times in seconds rise strictly; a value column that is empty throughout is left out. */
export type CurveTable = {
  timeS: Float64Array
  columns: Partial<Record<ValueColumn, Float64Array>>
  /** null: the file has none. */
  displacementMm: Float64Array | null
}

const readColumns = [...valueColumns, displacementColumn] as const
type ReadColumn = (typeof readColumns)[number]

/**
 * Reads a curve CSV: a header line with `time_s` and at least one of `force_N`, `force_lbf`, `counts`; it may have
 * `displacement_mm`; other columns are passed over. Rejects with Trouble `not-readable` that names file and line; a file that is not there with `not-found`.
 */
export async function readCurveCsv(file: string): Promise<CurveTable> {
  const timeS = growingColumn()
  let header: {
    time: number
    values: { name: ReadColumn; index: number; column: GrowingColumn; filled: number }[]
  } | null = null
  let lastTime = Number.NEGATIVE_INFINITY
  let lastLine = 0
  for await (const { line, fields } of csvRecords(file)) {
    lastLine = line
    if (header === null) {
      header = readHeader(file, line, fields)
      continue
    }
    if (fields.length === 1 && fields[0]!.trim() === '') continue
    const time = readNumber(file, line, 'time_s', fields[header.time])
    if (time === null) throw unreadable(file, line, 'time_s is empty', 'Give every sample its time in seconds.')
    if (time <= lastTime)
      throw unreadable(
        file,
        line,
        `time_s is ${time} after ${lastTime}; times must rise from line to line`,
        'Sort the samples by time, and write times with enough digits that no two are the same.',
      )
    lastTime = time
    timeS.push(time)
    for (const value of header.values) {
      const number = readNumber(file, line, value.name, fields[value.index])
      if (number !== null) value.filled++
      if (value.filled !== 0 && value.filled !== timeS.length())
        throw unreadable(
          file,
          number === null ? line : line - 1,
          `${value.name} is empty here and filled elsewhere`,
          'Fill the column throughout, or leave it empty throughout.',
        )
      value.column.push(number ?? 0)
    }
  }
  if (header === null) throw unreadable(file, Math.max(lastLine, 1), 'the file has no header line', headerHint)
  if (timeS.length() === 0)
    throw unreadable(file, lastLine, 'no samples follow the header line', 'Write one line per sample below the header.')
  const columns: CurveTable['columns'] = {}
  let displacementMm: Float64Array | null = null
  for (const { name, column, filled } of header.values) {
    if (filled === 0) continue
    if (name === displacementColumn) displacementMm = column.values()
    else columns[name] = column.values()
  }
  if (Object.keys(columns).length === 0)
    throw unreadable(file, lastLine, 'every value is empty', 'Fill force_N, force_lbf or counts.')
  return { timeS: timeS.values(), columns, displacementMm }
}

const headerHint =
  'The first line that is no comment must name the columns: time_s and one of force_N, force_lbf, counts.'

function readHeader(file: string, line: number, fields: readonly string[]) {
  const names = fields.map((field) => field.trim())
  const twice = namedTwice(names)
  if (twice !== null) throw unreadable(file, line, `the column "${twice.slice(0, 40)}" is named twice`, headerHint)
  const time = names.indexOf('time_s')
  const values = readColumns
    .filter((name) => names.includes(name))
    .map((name) => ({ name, index: names.indexOf(name), column: growingColumn(), filled: 0 }))
  if (time < 0 || !values.some(({ name }) => name !== displacementColumn)) {
    const found = names.join(', ').slice(0, 80)
    const separated = /[;\t]/.test(found) ? 'Columns are separated by commas. ' : ''
    const missing = time < 0 ? 'time_s is' : 'force_N, force_lbf and counts are all'
    throw unreadable(file, line, `the header "${found}" is no curve header: ${missing} missing`, separated + headerHint)
  }
  return { time, values }
}

function namedTwice(names: readonly string[]): string | null {
  const seen = new Set<string>()
  for (const name of names) {
    if (seen.has(name)) return name
    if (name !== '') seen.add(name)
  }
  return null
}

function readNumber(file: string, line: number, name: string, field: string | undefined): number | null {
  const text = field?.trim() ?? ''
  if (text === '') return null
  const number = plainNumber(text)
  if (number === null)
    throw unreadable(file, line, noNumber(name, text), 'Write plain numbers with a point, such as 12.5 or -3e4.')
  return number
}

const unreadable = (file: string, line: number, what: string, hint: string) =>
  new Trouble('not-readable', `${file}, line ${line}: ${what}.`, hint)

/** One curve to be written: whole microseconds, readings where the device sends counts, force where there is a scale. */
export type CurveRows = { timeS: Float64Array; counts: Float64Array | null; forceN: Float64Array | null }

/** Curve CSV text in pieces of some thousand lines, so that a long curve is never one string. Comments come first, each behind "# ". */
export function* curveCsvText(curve: CurveRows, comments: readonly string[] = []): Generator<string> {
  for (const comment of comments) yield `# ${comment.replaceAll(/[\r\n]+/g, ' ')}\n`
  yield 'time_s,counts,force_N\n'
  const { timeS, counts, forceN } = curve
  for (let from = 0; from < timeS.length; from += 4096) {
    let text = ''
    for (let i = from; i < Math.min(from + 4096, timeS.length); i++)
      text += `${timeS[i]!.toFixed(6)},${counts === null ? '' : counts[i]},${forceN === null ? '' : forceN[i]}\n`
    yield text
  }
}
