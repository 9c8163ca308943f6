import { type FailurePattern, failurePattern } from '#contract/breaks/assessment.ts'
import { isoDate, note } from '#contract/values.ts'
import { readTypedNumber } from '#domain/units/typedNumber.ts'
import { dialFault } from '#words/specimens/dialWords.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { askForDay } from '#words/units/typedDay.ts'
import { type FieldUnit, readQuantity } from '#words/units/typedQuantity.ts'

/** What a line of a list says of one break; loads in N. */
export type ReadLine = {
  number: string
  peakN: number
  woodFailurePercent: number | null
  failurePattern: FailurePattern | null
  brokenOn: string | null
  note: string
}

/** A line that holds something, by its number from 1; or what is wrong with it. */
export type DialLine = { line: number } & ({ kind: 'read'; said: ReadLine } | { kind: 'wrong'; error: string })

const longestLine = 5000
const longestNumber = 200

/** Reads a list of readings of a dial, one a line; a first line of headings is none. `force`: the unit of a load without one. */
export function readDialLines(text: string, force: FieldUnit): DialLine[] {
  const lines = text.split(/\r\n|\r|\n/).flatMap((content, index) => {
    const fields = fieldsOf(content)
    return fields.every((field) => field === '') ? [] : [{ line: index + 1, fields, content }]
  })
  const isHead = lines.length > 1 && lines[0]!.fields.length > 1 && !/\d/.test(lines[0]!.content)
  return lines.slice(isHead ? 1 : 0).map(({ line, fields, content }): DialLine => {
    const read =
      content.length > longestLine || fields[0]!.length > longestNumber
        ? { error: dialFault.tooLong }
        : readFields(fields, force)
    return 'error' in read ? { line, kind: 'wrong', error: read.error } : { line, kind: 'read', said: read }
  })
}

/** The fields of a line: parted by tabs, else semicolons, else commas with a space behind them, else spaces. */
function fieldsOf(line: string): string[] {
  for (const between of [/\t/, /;/, /,(?=\s|$)/])
    if (between.test(line)) return line.split(between).map((one) => one.trim())
  // A unit belongs to the number before it
  return line
    .trim()
    .replaceAll(/ +(%|[kK]?[nN]|lb[fs]?|kgf?)(?= |$)/g, '\u00a0$1')
    .split(/ +/)
}

function readFields([number = '', load = '', ...others]: string[], force: FieldUnit): ReadLine | { error: string } {
  if (number === '' || load === '') return { error: dialFault.tooFew }
  const peak = readQuantity(load, force, `the load ${inUnit(force.unit)}, such as 4800`)
  if ('error' in peak) return peak
  if (peak.stored === null || peak.stored <= 0) return { error: dialFault.noLoad }
  const said: ReadLine = {
    ...{ number, peakN: peak.stored, woodFailurePercent: null, failurePattern: null, brokenOn: null, note: '' },
  }
  for (const [place, field] of others.entries()) {
    const fault = field === '' ? null : takeField(said, field, place === others.length - 1)
    if (fault !== null) return { error: fault }
  }
  return said
}

/** Takes a field by what it looks like; what looks like nothing else is the note, where it stands last. */
function takeField(said: ReadLine, field: string, isLast: boolean): string | null {
  const pattern = failurePattern.safeParse(field.toUpperCase())
  if (pattern.success) {
    if (said.failurePattern !== null) return dialFault.said(field)
    said.failurePattern = pattern.data
    return null
  }
  if (/^\d{1,4}[-./]\d{1,2}[-./]\d{1,4}$/.test(field)) {
    if (!isoDate.safeParse(field).success) return askForDay
    if (said.brokenOn !== null) return dialFault.said(field)
    said.brokenOn = field
    return null
  }
  const typed = readTypedNumber(field)
  if (typed.kind === 'number' && ['', '%'].includes(typed.unit.trim())) {
    if (!(typed.value >= 0 && typed.value <= 100)) return dialFault.notPercent(field)
    if (said.woodFailurePercent !== null) return dialFault.said(field)
    said.woodFailurePercent = typed.value
    return null
  }
  if (!isLast) return /^[A-Za-z]{2,4}$/.test(field) ? dialFault.noPattern(field) : dialFault.said(field)
  if (!note.safeParse(field).success) return dialFault.tooLong
  said.note = field
  return null
}
