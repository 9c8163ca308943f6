import type { NumberedSpecimen } from '#contract/programme/labelProcedures.ts'
import { patternOrder } from '../breaks/patternWords.ts'
import { numberNotFoundWords, plannedBlockWords } from '../programme/findWords.ts'
import { countOf } from '../units/counts.ts'
import type { Quantity } from '../units/quantities.ts'

/** How a reading of a dial is written in a list. */
export const dialLineHint =
  'Number of the specimen, load, and where known wood failure, failure pattern, day of the break and a note: 28; 4800 N; 75 %; CF; 2031-05-02. Between them a semicolon, a tab, or a comma and a space.'

/** What is wrong with a line of a list of readings, or doubtful in it, each as one sentence. */
export const dialFault = {
  tooFew: 'A specimen and a load are needed, such as 28; 4800 N.',
  noLoad: 'The load must be above 0.',
  notPercent: (text: string) => `“${text}” is no wood failure from 0 to 100 %.`,
  said: (text: string) => `“${text}” says what the line said before in another way.`,
  tooLong: 'The line is too long.',
  noPattern: (text: string) => `“${text}” is no failure pattern; those are ${patternOrder.join(', ')}.`,
  twice: (line: number) => `Line ${line} has the same specimen. Is that a second result?`,
  broke: 'This specimen broke already; the new result stands beside what it has.',
} as const

/** Why no result can be typed for what a number stands for; null: it is a specimen. `typed` is the number as it was written. */
export function noSpecimenWords(typed: string, { found }: NumberedSpecimen, length: Quantity): string | null {
  if (found.kind === 'specimen') return null
  if (found.kind === 'planned') return plannedBlockWords(found, length)
  return [numberNotFoundWords(typed, found), found.nearest.join(', ')].join(' ').trim()
}

/** What a list of readings comes to so far. */
export function dialListWords({ read, wrong, asked }: { read: number; wrong: number; asked: number }): string {
  if (read + wrong === 0) return ''
  const parts = [
    `${countOf(read, 'reading')} understood`,
    asked === 0 ? '' : `${countOf(asked, 'question')}`,
    wrong === 0 ? '' : `${countOf(wrong, 'line')} to mend`,
  ]
  return `${parts.filter((part) => part !== '').join(', ')}.`
}

/** That more lines were typed than are taken at once. */
export function tooManyLines(most: number): string {
  return `At most ${countOf(most, 'line')} are taken at once: record the first, then the others.`
}

/** That readings were recorded. */
export function dialRecordedWords(count: number): string {
  return `${countOf(count, 'reading')} ${count === 1 ? 'is' : 'are'} recorded.`
}
