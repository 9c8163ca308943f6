import type { PullName } from '#contract/programme/pull.ts'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { ageInMonthsWords } from '#words/units/calendarDays.ts'
import { countOf } from '#words/units/counts.ts'

/** What tells a pull from others. */
export function pullKey({ studyId, gluedOn, ageMonths }: PullName): string {
  return `${studyId} ${gluedOn} ${ageMonths}`
}

/** What a session is called as long as nobody calls it otherwise: its pulls, else how many specimens it has. */
export function sessionTitle(pulls: readonly Pick<PullSummary, 'studyTitle' | 'ageMonths'>[], others: number): string {
  const names = [...new Set(pulls.map(({ studyTitle, ageMonths }) => `${studyTitle}, ${ageInMonthsWords(ageMonths)}`))]
  if (others > 0) names.push(countOf(others, names.length === 0 ? 'specimen' : 'more specimen'))
  const title = names.join('; ')
  return title.length <= 200 ? title : `${title.slice(0, 197)} …`
}

/** Those of which blocks wait on the shelf, what is due before what is not, then by day. */
export function pullsToBreak(pulls: readonly PullSummary[]): PullSummary[] {
  const open = ['due', 'late', 'missed', 'soon', 'planned']
  return pulls
    .filter(({ gluedOn, state, blocks }) => gluedOn !== null && blocks.waiting > 0 && open.includes(state))
    .toSorted((a, b) => rank(a) - rank(b) || (a.dueOn < b.dueOn ? -1 : 1))
}

const rank = ({ state }: PullSummary) => (state === 'due' || state === 'late' ? 0 : state === 'missed' ? 1 : 2)
