import type { PullState, PullSummary } from '#contract/programme/pullProcedures.ts'
import { hashOf } from '../../../routes/route.ts'

const openStates: readonly PullState[] = ['due', 'late', 'missed', 'soon', 'planned']

/** Whether glued blocks of a pull wait on the shelf, and nobody decided against it. */
export function canBreak({ gluedOn, state, blocks }: PullSummary): boolean {
  return gluedOn !== null && blocks.waiting > 0 && openStates.includes(state)
}

/** Those of which blocks wait on the shelf, what is due before what is not, then by day. */
export function pullsToBreak(pulls: readonly PullSummary[]): PullSummary[] {
  return pulls.filter(canBreak).toSorted((a, b) => rank(a) - rank(b) || (a.dueOn < b.dueOn ? -1 : 1))
}

/** Whether the window of a pull is open: it is what there is to break now. */
export function isOpenNow({ state }: Pick<PullSummary, 'state'>): boolean {
  return state === 'due' || state === 'late'
}

const rank = (pull: PullSummary) => (isOpenNow(pull) ? 0 : pull.state === 'missed' ? 1 : 2)

/** What an address says behind the page of a new session of the pulls that are chosen, by their keys: "?pulls=3-0-6,3-1-0"; '' for none. */
export function addressOfPulls(keys: readonly string[]): string {
  return keys.length === 0 ? '' : `?pulls=${keys.join(',')}`
}

/** Where a session of some pulls is begun, with those of them chosen that can be broken; it offers all pulls of the study, or of all. */
export function breakAddress(studyId: number | null, pulls: readonly PullSummary[]): string {
  const place = hashOf({ page: 'new-breaking', ...(studyId === null ? {} : { studyId }) })
  return `${place}${addressOfPulls(pullsToBreak(pulls).map(({ key }) => key))}`
}

/** The keys of the pulls that an address says are chosen; none where it says nothing of them. */
export function pullsInAddress(hash: string): string[] {
  const at = hash.indexOf('?')
  const said = at < 0 ? null : new URLSearchParams(hash.slice(at)).get('pulls')
  return said === null ? [] : said.split(',')
}
