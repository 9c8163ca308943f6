import { notANumber } from '#words/units/notANumber.ts'
import { readNumber } from '../../../widgets/typedNumber.ts'

/** A typed resolution in the unit of the reading, or one clear sentence; nothing typed: not known. */
export function readResolution(text: string): { resolution: number | null } | { error: string } {
  const typed = readNumber(text)
  if (typed === undefined) return { error: notANumber(text, 'the resolution of the reading') }
  if (typed === null) return { resolution: null }
  return typed > 0
    ? { resolution: typed }
    : { error: 'The resolution must be more than 0; leave it empty if it is not known.' }
}

/** The name that a calibration gets if nobody thinks of a better one. */
export function proposedName(now: Date): string {
  return `Weights of ${now.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })}`
}

/** A year from now, the usual interval (common practice, no source), as a date field wants it. */
export function proposedDueDate(now: Date): string {
  return new Date(Date.UTC(now.getFullYear() + 1, now.getMonth(), now.getDate())).toISOString().slice(0, 10)
}
