import type { PullDecision } from '#contract/programme/pull.ts'
import type { PullSummary } from '#contract/programme/pullProcedures.ts'
import { studyPulls } from '#domain/programme/calendar/studyPulls.ts'
import type { Database } from '../core/database.ts'
import { storeRecord } from '../core/recordKind.ts'
import { conflict } from '../core/recordTrouble.ts'
import { inTransaction } from '../core/transaction.ts'
import { pullSources } from './pulls.ts'
import { pullDecisionKind } from './studyKinds.ts'

type NewPullDecision = Omit<PullDecision, 'pullDecisionId'>

/**
 * Records a person's word on a pull; the newest of those on the same pull stands. Throws the trouble "not-found" for a study that
 * is not there, "conflict" for what changes nothing or cannot be.
 */
export function addPullDecision(database: Database, made: NewPullDecision): PullDecision {
  return inTransaction(database, () => {
    const today = made.recordedAt.slice(0, 10)
    const pulls = pullSources(database, made.studyId)
      .rows.flatMap((source) => studyPulls(source, today))
      .filter(({ gluedOn }) => made.gluedOn === null || gluedOn === made.gluedOn)
    refuse(
      made,
      pulls.filter(({ ageMonths }) => ageMonths === made.ageMonths),
      pulls.length > 0,
    )
    return storeRecord(database, pullDecisionKind, made)
  })
}

function refuse(made: NewPullDecision, about: readonly PullSummary[], anyPull: boolean): void {
  const { kind, dueOn, gluedOn, blocksPerSeries } = made
  if (!anyPull) throw conflict('The study has no pull with a date yet.', 'Glue its blocks, or give the study a start.')
  if (kind === 'added') {
    if (about.some(({ added, state }) => !added || state !== 'skipped'))
      throw conflict('There is a pull of this age already.', 'Move that pull, or add one of another age.')
    if (blocksPerSeries === null)
      throw conflict('An added pull takes spares.', 'Say how many spares of each series it takes.')
  } else {
    if (about.length === 0) throw conflict('The study has no pull of this age.', 'Load the pulls again and choose one.')
    if (blocksPerSeries !== null) throw conflict('Only an added pull takes spares.', 'Leave the number of spares out.')
  }
  if (kind === 'moved' && dueOn === null) throw conflict('A moved pull needs a day.', 'Say on which day it is to be.')
  if ((kind === 'skipped' || kind === 'restored') && dueOn !== null)
    throw conflict('A pull that is skipped or restored takes no day.', 'Leave the day out.')
  if (dueOn !== null && gluedOn !== null && dueOn < gluedOn)
    throw conflict('The day lies before the glue-up.', 'Choose a day on which the blocks are glued.')
  if (kind === 'skipped' && about.every(({ state }) => state === 'skipped'))
    throw conflict('The pull is skipped already.', 'Restore it if it is to be made after all.')
  if (kind === 'restored' && about.every(({ decision }) => decision === null || decision.kind === 'restored'))
    throw conflict('The pull stands as it was planned.', 'There is nothing to restore.')
}
