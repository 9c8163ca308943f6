import type { BreakingRow } from '#contract/programme/breakingProcedures.ts'
import type { Series } from '#contract/programme/study.ts'
import type { BreakDoubt, SessionGroup } from '#domain/programme/breaking/sessionReport.ts'
import { flagNames } from '../breaks/flagWords.ts'
import { gapInWords } from '../breaks/groupName.ts'
import { resultsWords } from '../specimens/resultsWords.ts'
import { ageInMonthsWords } from '../units/calendarDays.ts'
import { countOf } from '../units/counts.ts'
import { percentWords } from '../units/numbers.ts'
import type { Quantity } from '../units/quantities.ts'

/** How far a session is: "7 of 24 broken, 1 passed over". */
export function progressWords(
  row: Pick<BreakingRow, 'broken' | 'skipped' | 'withdrawn'> & { specimens: number },
): string {
  const { broken, skipped, withdrawn, specimens } = row
  const words = [`${broken} of ${specimens} broken`]
  if (skipped > 0) words.push(`${skipped} passed over`)
  if (withdrawn > 0) words.push(`${withdrawn} withdrawn`)
  return words.join(', ')
}

/** What the blocks of a group have in common, in one line. */
export function groupWords(group: SessionGroup, length: Quantity): string {
  const { ageMonths, bondLineGapMm: gapMm } = group
  const series = seriesWords({ ...group, gapMm }, length)
  return ageMonths === null ? series : `${series} · ${ageInMonthsWords(ageMonths)}`
}

/** What the blocks of a series have in common, in one line; a tight joint is not mentioned, one that nobody measured is. */
export function seriesWords(
  { adhesive, jointType, gapMm, exposure }: Omit<Series, 'gapMm'> & { gapMm: number | null },
  length: Quantity,
): string {
  const gap = gapMm === 0 ? '' : gapInWords(gapMm, length.text)
  return [adhesive, jointType, gap, exposure].filter((words) => words !== '').join(' · ')
}

/** What the group of a planned block has in common, its age or that it is a spare included. */
export function groupOfBlockWords(block: Series & { ageMonths: number | null }, length: Quantity): string {
  const age = block.ageMonths === null ? 'spare' : ageInMonthsWords(block.ageMonths)
  return `${seriesWords(block, length)} · ${age}`
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
