// Held by tests/exchange/import/readRows.spec.ts.
import { failurePattern } from '#contract/breaks/assessment.ts'
import { type ImportField, type MeasuredField, unitsOfField } from '#contract/specimens/importMapping.ts'
import { note, words } from '#contract/values.ts'
import { cellFault } from '#words/specimens/import/rejectedWords.ts'
import type { Cell } from '../sheets/sheet.ts'
import { cellDate } from './cellDate.ts'
import { bare, cellNumber, longestNumber, type NumberUnit, type Read } from './cellNumber.ts'
import { monthsOfYears } from './conditionOf.ts'
import type { NumberWriting } from './decimalSign.ts'

/** What a field of the mapping says of how its cells are to be read. */
export type FieldSettings = {
  readonly unit: string | null
  readonly dateFormat: string | null
  readonly writing: NumberWriting
}

/** Areas are spelt with the sign of a square where units are converted. */
const archiveUnit = { mm2: 'mm²' } as Readonly<Record<string, string>>

/** The value of a cell for a field: numbers in N, MPa, mm, mm², percent and months, days as ISO dates. */
export function readField(field: ImportField, cell: Cell, settings: FieldSettings): Read<number | string> {
  const { writing } = settings
  switch (field) {
    case 'load':
    case 'strength':
    case 'area':
    case 'overlapLength':
    case 'overlapWidth':
      return within(cellNumber(cell, unitOf(field, settings), writing), (value) => value > 0, cellFault.notPositive)
    case 'bondLineGap':
      return within(cellNumber(cell, unitOf(field, settings), writing), (value) => value >= 0, cellFault.negative)
    case 'woodFailurePercent':
      return within(cellNumber(cell, percentUnit, writing), (value) => value >= 0 && value <= 100, cellFault.notPercent)
    case 'ageMonths':
      return within(age(cell, settings), (value) => value >= 0, cellFault.negative)
    case 'gluedOn':
    case 'brokenOn':
      return cellDate(cell, settings.dateFormat)
    case 'failurePattern':
      return pattern(cell)
    default:
      return written(cell, field === 'note')
  }
}

const percentUnit: NumberUnit = { to: '%', column: '%', known: ['%'] }

function unitOf(field: MeasuredField, { unit }: FieldSettings): NumberUnit {
  const [first] = unitsOfField[field]
  return { to: archiveUnit[first] ?? first, column: unit, known: unitsOfField[field] }
}

function within(read: Read<number>, fits: (value: number) => boolean, fault: (value: number) => string): Read<number> {
  if ('fault' in read || fits(read.value)) return read
  return { fault: fault(Number(read.value.toPrecision(6))) }
}

/** An age in months; months or years may be named behind the number, and are months where neither cell nor column says so. */
function age(cell: Cell, { unit, writing }: FieldSettings): Read<number> {
  const [, number = cell.text, named] =
    cell.kind === 'text' && cell.text.length <= longestNumber
      ? (/^(.*?)\s*(months?|mo\.?|years?|yrs?\.?)\s*$/i.exec(cell.text) ?? [])
      : []
  const read = cellNumber(cell.kind === 'text' ? { ...cell, text: number } : cell, bare, writing)
  const isYears = named === undefined ? unit === 'years' : /^y/i.test(named)
  return 'value' in read && isYears ? { value: monthsOfYears(read.value) } : read
}

function pattern(cell: Cell): Read<string> {
  const read = written(cell, false)
  if ('fault' in read) return read
  const found = failurePattern.safeParse(read.value.toUpperCase())
  return found.success ? { value: found.data } : { fault: cellFault.noPattern(read.value, failurePattern.options) }
}

/** A text as it stands in the cell; numbers and days as they are shown. */
function written({ kind, text }: Cell, long: boolean): Read<string> {
  if (kind === 'error') return { fault: cellFault.isError(text) }
  if (kind === 'unstored') return { fault: cellFault.unstored }
  const kept = (long ? note : words).safeParse(text.trim())
  return kept.success ? { value: kept.data } : { fault: cellFault.tooLong(long ? 4000 : 200) }
}
