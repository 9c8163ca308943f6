import { isoDate } from '#contract/values.ts'
import { cellFault } from '#words/specimens/import/rejectedWords.ts'
import type { Cell } from '../sheets/sheet.ts'
import type { Read } from './cellNumber.ts'

/** Nobody writes a longer one; in a million blanks its end would be looked for from every one of them. */
const longestDay = 100

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/** The day of a cell. `format` null: only what can be but one day is taken. */
export function cellDate(cell: Cell, format: string | null): Read<string> {
  const { kind, text } = cell
  if (kind === 'date') return text === '' ? { fault: cellFault.noSuchDay('29 February 1900') } : { value: text }
  if (kind === 'error') return { fault: cellFault.isError(text) }
  if (kind === 'unstored') return { fault: cellFault.unstored }
  if (kind === 'time') return { fault: cellFault.isTime }
  if (kind === 'truth') return { fault: cellFault.isTruth(text) }
  if (kind === 'number' && !/^YYYY.?MM?.?DD?$/.test(format ?? '')) return { fault: cellFault.dayIsNumber(text) }
  if (text.length > longestDay) return { fault: cellFault.notADay(text, format ?? 'YYYY-MM-DD') }
  // A time of day behind it does not change the day
  const day = text.trim().replace(/(?:T|\s+)\d{1,2}:\d{2}(?::\d{2}(?:[.,]\d+)?)?(?:Z|\s*[AP]M)?$/i, '')
  if (format === null) return onlyDay(day, text)
  const parts = datePattern(format).exec(day)?.groups
  if (parts === undefined) return { fault: cellFault.notADay(text, format) }
  const found = existing(Number(yearOf(parts)), monthOf(parts), Number(parts.day))
  return found === null ? { fault: cellFault.noSuchDay(text) } : { value: found }
}

const waysToWrite = [
  'YYYY-M-D',
  'D.M.YYYY',
  'M.D.YYYY',
  'D/M/YYYY',
  'M/D/YYYY',
  'D-M-YYYY',
  'M-D-YYYY',
  'D MMM YYYY',
  'MMM D, YYYY',
  'YYYY/M/D',
]

function onlyDay(day: string, text: string): Read<string> {
  const found = new Set<string>()
  let written = false
  for (const format of waysToWrite) {
    const parts = datePattern(format).exec(day)?.groups
    if (parts === undefined) continue
    written = true
    const one = existing(Number(parts.year), monthOf(parts), Number(parts.day))
    if (one !== null) found.add(one)
  }
  if (found.size === 1) return { value: [...found][0]! }
  if (found.size > 1) return { fault: cellFault.twoDays(text) }
  return { fault: written ? cellFault.noSuchDay(text) : cellFault.notADay(text, 'YYYY-MM-DD') }
}

const patterns = new Map<string, RegExp>()

function datePattern(format: string): RegExp {
  const known = patterns.get(format)
  if (known !== undefined) return known
  const body = format.replaceAll(/YYYY|YY|MMM|MM?|DD?|[ ./,-]/g, (token) => {
    if (token === 'YYYY') return '(?<year>\\d{4})'
    if (token === 'YY') return '(?<short>\\d{2})'
    if (token === 'MMM') return '(?<name>[A-Za-z]{3,9})\\.?'
    // Digits that run on are counted, those with something between them may have a leading zero or not
    if (token[0] === 'M') return /M(?:DD|Y)/.test(format) ? '(?<month>\\d{2})' : '(?<month>\\d{1,2})'
    if (token[0] === 'D') return /D(?:M|Y)|MD/.test(format) ? '(?<day>\\d{2})' : '(?<day>\\d{1,2})'
    return token === ' ' ? '\\s+' : `\\${token}`
  })
  const made = new RegExp(`^${body}$`)
  patterns.set(format, made)
  return made
}

type Parts = Readonly<Record<string, string | undefined>>

function monthOf({ month, name }: Parts): number {
  return name === undefined ? Number(month) : months.indexOf(name.slice(0, 3).toLowerCase()) + 1
}

/** Of two digits, 69 to 99 lie in the last century and 00 to 68 in this (POSIX strptime, %y). */
function yearOf({ year, short }: Parts): string {
  return year ?? `${Number(short) >= 69 ? 19 : 20}${short}`
}

function existing(year: number, month: number, day: number): string | null {
  const text = [String(year).padStart(4, '0'), String(month).padStart(2, '0'), String(day).padStart(2, '0')].join('-')
  return isoDate.safeParse(text).success ? text : null
}
