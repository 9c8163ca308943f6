import type { FoundNumber } from '#contract/programme/labelProcedures.ts'
import { ageInMonthsWords } from '../units/calendarDays.ts'
import type { Quantity } from '../units/quantities.ts'
import { seriesWords } from './pullWords.ts'

/** What a number is that belongs to a block which nobody glued yet. */
export function plannedBlockWords(
  { number, studyTitle, block }: Extract<FoundNumber, { kind: 'planned' }>,
  length: Quantity,
): string {
  const { group } = block
  const of =
    group === null
      ? ''
      : `: ${seriesWords(group, length)}, ${group.ageMonths === null ? 'spare' : ageInMonthsWords(group.ageMonths)}`
  return `${number} is a planned block of the study "${studyTitle}" that is not glued yet${of}.`
}

/** That there is no such number, and what may have been meant. */
export function numberNotFoundWords(
  typed: string,
  { wrongCheck, nearest }: Extract<FoundNumber, { kind: 'none' }>,
): string {
  const none = wrongCheck
    ? `${typed} is no number of a block: its check digit does not fit.`
    : `There is no block with the number ${typed}.`
  return nearest.length === 0 ? none : `${none} Nearest that there are:`
}
