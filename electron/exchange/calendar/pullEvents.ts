import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { pullDescription, pullTitle } from '#words/programme/pullWords.ts'
import type { CalendarPull } from './pullCalendar.ts'

/** Pulls as entries of a calendar; `archive` tells those of one archive from those of all others. */
export function pullEvents(pulls: readonly PullSummary[], archive: string): CalendarPull[] {
  return pulls.map((pull) => ({
    uid: `${archive}-${pull.key}@breakledger`,
    sequence: pull.sequence,
    dueOn: pull.dueOn,
    title: pullTitle(pull),
    description: pullDescription(pull, pull.decision?.reason ?? null),
    skipped: pull.state === 'skipped',
  }))
}
