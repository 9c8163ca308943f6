import type { BreakingRow } from '#contract/programme/breakingProcedures.ts'
import type { BreakDoubt, SessionGroup } from '#domain/programme/breaking/sessionReport.ts'
import { flagNames } from '../breaks/flagWords.ts'
import { resultsWords } from '../specimens/resultsWords.ts'
import { countOf } from '../units/counts.ts'
import { percentWords } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** How far a session is: "7 of 24 broken, 1 skipped". */
export function progressWords(
  row: Pick<BreakingRow, 'broken' | 'skipped' | 'withdrawn'> & { specimens: number },
): string {
  const { broken, skipped, withdrawn, specimens } = row
  const words = [`${broken} of ${specimens} broken`]
  if (skipped > 0) words.push(`${skipped} skipped`)
  if (withdrawn > 0) words.push(`${withdrawn} withdrawn`)
  return words.join(', ')
}

/** What the blocks of a group have in common, in one line. */
export function groupWords(
  { adhesive, jointType, bondLineGapMm, exposure, ageMonths }: SessionGroup,
  length: Quantity,
) {
  const gap = bondLineGapMm === null || bondLineGapMm === 0 ? '' : `gap ${length.text(bondLineGapMm)}`
  const age = ageMonths === null ? '' : plannedAgeWords(ageMonths)
  return [adhesive, jointType, gap, exposure, age].filter((words) => words !== '').join(' · ')
}

/** The age of a pull: "3 months". */
export function plannedAgeWords(ageMonths: number): string {
  return ageMonths === 0 ? 'age 0' : countOf(ageMonths, 'month')
}

/** What is to be looked at again about a block that was broken, short. */
export function breakDoubtWords(doubt: BreakDoubt, strength: Quantity): string {
  switch (doubt.kind) {
    case 'two-results':
      return resultsWords(doubt.results) ?? ''
    case 'not-assessed':
      return 'faces not described'
    case 'no-area':
      return 'no bonded area, so no strength'
    case 'declared-premature':
      return flagNames['premature-failure']
    case 'early-drop':
      return doubt.percentOfPeak === null
        ? 'early drop of the load'
        : `early drop at ${percentWords(doubt.percentOfPeak)} of the peak`
    case 'stick-slip':
      return 'stick-slip'
    case 'low':
    case 'high':
      return `${strength.text(doubt.strengthMPa)} is ${doubt.kind} against its group, median ${strength.text(doubt.medianMPa)}`
    case 'flag':
      return flagNames[doubt.flag]
  }
}

/** What can be done about a block without a result that can be relied on. */
export function repeatWords(spares: number): string {
  return spares === 0 ? 'no spare of its series waits' : `${countOf(spares, 'spare')} of its series waiting`
}
