import { Trouble } from '#contract/errors.ts'
import { plainNumber } from '#contract/plainNumber.ts'
import type { Observation } from '#domain/findings/observation.ts'
import { csvRecords, noNumber } from './csvRecords.ts'

/** Blocks of a table, and what is wrong with the rows that were left out, each with its line. */
export type FindingsTable = { observations: Observation[]; leftOut: { line: number; why: string }[] }

const needed = ['group', 'strength_MPa'] as const
const possible = ['specimen', 'wood_failure_percent', 'age_months', 'board', 'excluded_because'] as const
type Column = (typeof needed)[number] | (typeof possible)[number]

/**
 * Reads a table of results: a header line with group and strength_MPa, and optionally specimen, wood_failure_percent, age_months,
 * board and excluded_because; other columns are passed over. A row that cannot be read is left out and named, never guessed.
 * Rejects with a Trouble that names the file where it has no such header or no row that can be read.
 */
export async function readFindingsCsv(file: string): Promise<FindingsTable> {
  const observations: Observation[] = []
  const leftOut: FindingsTable['leftOut'] = []
  let header: Header | null = null
  let lastLine = 1
  for await (const { line, fields } of csvRecords(file, { comments: false })) {
    lastLine = line
    if (fields.length === 1 && fields[0]!.trim() === '') continue
    if (header === null) {
      header = readHeader(file, line, fields)
      continue
    }
    const read = readRow(header, fields)
    if (typeof read === 'string') leftOut.push({ line, why: read })
    else observations.push(read)
  }
  if (header === null)
    throw new Trouble('not-readable', `${file}, line ${lastLine}: the file has no header line.`, headerHint)
  if (observations.length === 0)
    throw new Trouble(
      'not-readable',
      leftOut.length === 0
        ? `${file}: no rows follow the header line.`
        : `${file}, line ${leftOut[0]!.line}: ${leftOut[0]!.why}. No row can be read.`,
      'Write one row for each block below the header line.',
    )
  return { observations, leftOut }
}

const headerHint = `The first line must name the columns ${needed.join(' and ')}; ${possible.join(', ')} may follow.`

type Header = { places: Partial<Record<Column, number>>; width: number }

function readHeader(file: string, line: number, fields: readonly string[]): Header {
  const names = fields.map((field) => field.trim())
  const other = names.length === 1 ? /[;\t]/.exec(names[0]!)?.[0] : undefined
  if (other !== undefined)
    throw new Trouble(
      'not-readable',
      `${file}, line ${line}: its columns are parted by ${other === ';' ? '";"' : 'tabs'}, not by commas.`,
      'Save the table with commas between the columns, and with decimal points.',
    )
  const places: Partial<Record<Column, number>> = {}
  for (const name of [...needed, ...possible]) {
    const index = names.indexOf(name)
    if (index >= 0) places[name] = index
    if (index >= 0 && names.indexOf(name, index + 1) >= 0)
      throw new Trouble('not-readable', `${file}, line ${line}: the column ${name} is named twice.`, headerHint)
  }
  for (const name of needed)
    if (places[name] === undefined)
      throw new Trouble('not-readable', `${file}, line ${line}: the column ${name} is missing.`, headerHint)
  return { places, width: names.length }
}

/** The block of a row, or what is wrong with the row. */
function readRow({ places, width }: Header, fields: readonly string[]): Observation | string {
  if (fields.length > width)
    return `the row has ${fields.length} fields and the header ${width}; a decimal comma would do that: write a point, or put the number in quotes`
  const text = (name: Column): string | null => {
    const place = places[name]
    const field = place === undefined ? '' : (fields[place] ?? '').trim()
    return field === '' ? null : field
  }
  const faults: string[] = []
  const number = (name: Column, fits: (value: number) => boolean, must: string): number | null => {
    const field = text(name)
    if (field === null) return null
    const value = plainNumber(field)
    if (value === null)
      faults.push(/^\d+,\d+$/.test(field) ? `${name} is "${field}"; write a decimal point` : noNumber(name, field))
    else if (!fits(value)) faults.push(`${name} is ${field}, but must be ${must}`)
    return value
  }
  const group = text('group')
  if (group === null) faults.push('group is empty')
  const strengthMPa = number('strength_MPa', (value) => value > 0, 'above 0')
  if (strengthMPa === null && faults.length === 0) faults.push('strength_MPa is empty')
  const woodFailurePercent = number('wood_failure_percent', (value) => value >= 0 && value <= 100, 'from 0 to 100')
  const ageMonths = number('age_months', (value) => value >= 0, '0 or more')
  if (places.age_months !== undefined && ageMonths === null && faults.length === 0) faults.push('age_months is empty')
  if (faults.length > 0) return faults[0]!
  return {
    group: group!,
    ageMonths,
    specimen: text('specimen'),
    strengthMPa: strengthMPa!,
    woodFailurePercent,
    board: text('board'),
    excludedBecause: text('excluded_because'),
    simulated: false,
  }
}
