import { countOf } from '../../units/counts.ts'
import { dayWords } from '../../units/times.ts'

/** What a chart of drift says: from when to when, and how far the newest lies from the first. */
export function driftWords(days: readonly string[], newest: string): string {
  if (days.length === 0) return 'There is no calibration.'
  return `${countOf(days.length, 'calibration')}, ${dayWords(days[0]!)} to ${dayWords(days.at(-1)!)}. The newest against the first: ${newest}.`
}
