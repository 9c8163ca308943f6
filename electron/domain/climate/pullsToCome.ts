import type { PullToCome } from '#contract/findings/climateAnswers.ts'
import type { PullState, PullSummary } from '#contract/programme/pullProcedures.ts'
import { dayOf } from '../programme/calendar/calendarDay.ts'
import { type SeriesTraits, traitsKey } from '../programme/study/plannedAges.ts'

/** Blocks of a study that wait in a store; `ageMonths` null: spares. */
export type WaitingBlocks = SeriesTraits & { studyId: number; gluedOn: string; ageMonths: number | null }

const toCome: readonly PullState[] = ['planned', 'soon', 'due', 'late']
const secondsPerDay = 86_400

/**
 * The days (seconds since 1970, UTC) on which blocks that wait in a store are to leave it, the nearest first; a pull that was added
 * takes spares of its day. Pulls that were skipped or missed do not come.
 */
export function pullsToCome(waiting: readonly WaitingBlocks[], pulls: readonly PullSummary[]): PullToCome[] {
  const keyOf = (studyId: number, gluedOn: string | null, ageMonths: number | null) =>
    JSON.stringify([studyId, gluedOn, ageMonths])
  const blocks = Map.groupBy(waiting, ({ studyId, gluedOn, ageMonths }) => keyOf(studyId, gluedOn, ageMonths))
  const found = new Map<string, PullToCome>()
  for (const { studyId, gluedOn, ageMonths, added, state, dueOn } of pulls) {
    if (!toCome.includes(state)) continue
    for (const one of blocks.get(keyOf(studyId, gluedOn, added ? null : ageMonths)) ?? []) {
      const pull = { series: traitsKey(one), ageMonths, dueS: dayOf(dueOn) * secondsPerDay }
      found.set(JSON.stringify(pull), pull)
    }
  }
  return [...found.values()].sort((one, other) => one.dueS - other.dueS)
}
