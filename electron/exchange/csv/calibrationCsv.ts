import { type CalibrationRow, loadDirection } from '#contract/calibration/reading.ts'
import { Trouble } from '#contract/errors.ts'
import { plainNumber } from '#contract/plainNumber.ts'
import { csvRecords, noNumber } from './csvRecords.ts'

/** The rows of a calibration file, and the number of the line on which each stands (the first is 1). */
export type CalibrationTable = { rows: CalibrationRow[]; lines: number[] }

const columns = ['run', 'direction', 'force_N', 'reading'] as const

const unreadable = (file: string, line: number, what: string, hint: string) =>
  new Trouble('not-readable', `${file}, line ${line}: ${what}.`, hint)

/**
 * Reads a calibration CSV: a header line with run, direction, force_N and reading; other columns are passed over. Rejects
 * with Trouble `not-readable` that names file and line; a file that is not there with `not-found`.
 */
export async function readCalibrationCsv(file: string): Promise<CalibrationTable> {
  const rows: CalibrationRow[] = []
  const lines: number[] = []
  let places: Record<(typeof columns)[number], number> | null = null
  let lastLine = 1
  for await (const { line, fields } of csvRecords(file)) {
    lastLine = line
    if (places === null) {
      places = readHeader(file, line, fields)
      continue
    }
    if (fields.length === 1 && fields[0]!.trim() === '') continue
    const text = (name: (typeof columns)[number]) => (fields[places![name]] ?? '').trim()
    const number = (name: 'run' | 'force_N' | 'reading') => {
      const read = plainNumber(text(name))
      if (read === null) throw unreadable(file, line, noNumber(name, text(name)), 'Write a plain decimal number.')
      return read
    }
    const run = number('run')
    if (!Number.isSafeInteger(run) || run < 1)
      throw unreadable(file, line, `run is ${run}`, 'Number the runs 1, 2, 3, ...')
    const direction = loadDirection.safeParse(text('direction'))
    if (!direction.success)
      throw unreadable(file, line, `direction is "${text('direction').slice(0, 40)}"`, 'Write up or down.')
    rows.push({ run, direction: direction.data, forceN: number('force_N'), reading: number('reading') })
    lines.push(line)
  }
  if (places === null) throw unreadable(file, lastLine, 'the file has no header line', headerHint)
  if (rows.length === 0)
    throw unreadable(file, lastLine, 'no readings follow the header line', 'Write one line per reading below it.')
  return { rows, lines }
}

const headerHint = `The first line that is no comment must name the columns ${columns.join(', ')}.`

function readHeader(file: string, line: number, fields: readonly string[]) {
  const names = fields.map((field) => field.trim())
  const place = (name: (typeof columns)[number]) => {
    const index = names.indexOf(name)
    if (index < 0) throw unreadable(file, line, `there is no column ${name}`, headerHint)
    if (names.indexOf(name, index + 1) >= 0)
      throw unreadable(file, line, `the column ${name} is there twice`, headerHint)
    return index
  }
  return { run: place('run'), direction: place('direction'), force_N: place('force_N'), reading: place('reading') }
}
