import { type ColumnName, columnName, type LineFormatChoice, lineFormatName } from '#contract/bench/source.ts'
import { words as shortText } from '#contract/values.ts'
import { plainText } from '#words/units/plainText.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'
import type { CommandValues } from './command.ts'
import { UsageError } from './command.ts'

/** `unit`: what a number without one is in; another of its kind may stand behind it, as 25 kN. */
type Bounds = {
  above?: number
  below?: number
  from?: number
  to?: number
  whole?: boolean
  not?: number
  unit?: string
}

/** The number given for an option, or undefined when the option is absent. Throws UsageError outside the bounds. */
export function numberOption(values: CommandValues, name: string, bounds: Bounds = {}): number | undefined {
  const text = values[name]
  if (text === undefined) return undefined
  const { above, below, from, to, whole, not, unit = '' } = bounds
  const read = readQuantity(String(text), { unit, factor: 1 }, unit === '' ? 'a number' : `a number in ${unit}`)
  const number = 'error' in read || read.stored === null ? Number.NaN : read.stored
  const fits =
    Number.isFinite(number) &&
    (above === undefined || number > above) &&
    (below === undefined || number < below) &&
    (from === undefined || number >= from) &&
    (to === undefined || number <= to) &&
    (!whole || Number.isSafeInteger(number)) &&
    number !== not
  if (fits) return number
  const kind = whole ? 'a whole number' : 'a number'
  const limits = [
    above === undefined ? '' : `above ${above}`,
    below === undefined ? '' : `below ${below}`,
    from === undefined ? '' : `from ${from}`,
    to === undefined ? '' : `up to ${to}`,
    not === undefined ? '' : `other than ${not}`,
  ]
  const words = [kind, ...limits.filter((word) => word !== '')].join(' ')
  const because = 'error' in read ? ` ${plainText(read.error)}` : ''
  throw new UsageError(`--${name} must be ${words}, but is "${String(text)}".${because}`)
}

/** The word given for an option, or undefined. Throws UsageError when it is none of the words. */
export function wordOption<const W extends string>(
  values: CommandValues,
  name: string,
  words: readonly W[],
): W | undefined {
  const text = values[name]
  if (text === undefined) return undefined
  if (typeof text === 'string' && (words as readonly string[]).includes(text)) return text as W
  throw new UsageError(`--${name} must be one of ${words.join(', ')}, but is "${String(text)}".`)
}

/** The text given for an option, or undefined. Throws UsageError when it is empty. */
export function textOption(values: CommandValues, name: string): string | undefined {
  const text = values[name]
  if (text === undefined) return undefined
  if (typeof text === 'string' && text !== '') return text
  throw new UsageError(`--${name} must not be empty.`)
}

/** The name given for an option, or undefined. Throws UsageError for one that no record takes. */
export function nameOption(values: CommandValues, name: string): string | undefined {
  const text = textOption(values, name)
  if (text === undefined) return undefined
  const read = shortText.min(1).safeParse(text)
  if (read.success) return read.data
  throw new UsageError(`--${name} must be a name of up to 200 characters.`)
}

/** The option --line-format, for whoever reads it with `lineFormatOption`. */
export const lineFormatHelp = {
  type: 'string',
  value: 'NAME',
  help: `${lineFormatName.options.join(', ')} (default checked)`,
} as const

/** The option --dry-run of whatever brings a file in. */
export const dryRunHelp = {
  type: 'boolean',
  help: 'says what would become of every row, and stores nothing',
} as const

/** The option --propose of whatever reads a table through a mapping. */
export const proposeHelp = {
  type: 'boolean',
  help: 'prints the mapping that the headings of FILE suggest, to be completed',
} as const

/** The option --by of whatever brings a file in. */
export const byHelp = {
  type: 'string',
  value: 'NAME',
  help: "who brings it in; the operator of the archive's settings without it",
} as const

/** The line format of --line-format and --columns. Throws UsageError for an unknown name, or columns that have no place. */
export function lineFormatOption(values: CommandValues): LineFormatChoice {
  const name = wordOption(values, 'line-format', lineFormatName.options) ?? 'checked'
  return { name, columns: columnsOption(values, name) }
}

/** Without --columns, those that the documentation shows. */
function columnsOption(values: CommandValues, lineFormat: string): ColumnName[] {
  const text = textOption(values, 'columns')
  if (lineFormat !== 'columns') {
    if (text !== undefined) throw new UsageError('--columns belongs to --line-format columns only.')
    return []
  }
  return (text ?? 'time_us,counts').split(',').map((word) => {
    const column = columnName.safeParse(word.trim())
    if (column.success) return column.data
    throw new UsageError(`--columns names "${word}", which is none of ${columnName.options.join(', ')}.`)
  })
}

/** Throws UsageError when both are given. */
export function refuseTwoScales(calibrationId: number | null | undefined, nPerCount: number | null | undefined): void {
  if (calibrationId != null && nPerCount != null)
    throw new UsageError('--calibration and --scale exclude each other: a calibration has its own scale.')
}
