import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { ageInMonthsWords } from '#words/units/calendarDays.ts'
import { countOf } from '#words/units/counts.ts'

/** What a session is called as long as nobody calls it otherwise: its pulls, else how many specimens it has. */
export function sessionTitle(pulls: readonly Pick<PullSummary, 'studyTitle' | 'ageMonths'>[], others: number): string {
  const names = [...new Set(pulls.map(({ studyTitle, ageMonths }) => `${studyTitle}, ${ageInMonthsWords(ageMonths)}`))]
  if (others > 0) names.push(countOf(others, names.length === 0 ? 'specimen' : 'more specimen'))
  const title = names.join('; ')
  return title.length <= 200 ? title : `${title.slice(0, 197)} …`
}
