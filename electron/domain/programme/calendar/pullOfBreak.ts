import { dayOf } from './calendarDay.ts'
import { type PullSource, studyPulls } from './studyPulls.ts'

/** A block of a study that was broken: the day of its glue-up, the age that it was planned for (null: a spare), and the day of its break. */
export type BrokenBlock = { studyId: number; gluedOn: string; ageMonths: number | null; brokenOn: string }

/**
 * Tells of a block in which pull it was broken: the age of its own pull where it was broken within that pull's window, else that of the pull
 * nearest in time within whose window it was; null: within none. A pull that was moved has its window about the day it
 * was moved to; one that was skipped has none.
 */
export function pullsOfBreaks(sources: readonly PullSource[]): (block: BrokenBlock) => number | null {
  const windows = Map.groupBy(sources.flatMap(windowsOf), ({ key }) => key)
  return ({ studyId, gluedOn, ageMonths, brokenOn }) => {
    const day = dayOf(brokenOn.slice(0, 10))
    const open = (windows.get(keyOf(studyId, gluedOn)) ?? [])
      .map((window) => ({ ...window, daysOff: Math.abs(day - window.dueDay) }))
      .filter(({ daysOff, windowDays }) => daysOff <= windowDays)
    const own = open.find((window) => window.ageMonths === ageMonths)
    const [nearest] = open.sort((one, other) => one.daysOff - other.daysOff)
    return (own ?? nearest)?.ageMonths ?? null
  }
}

const keyOf = (studyId: number, gluedOn: string | null) => `${studyId} ${gluedOn}`

function windowsOf(source: PullSource) {
  // Whether a pull is skipped hangs on no day.
  const pulls = studyPulls(source, source.study.recordedAt.slice(0, 10))
  return pulls.flatMap(({ studyId, gluedOn, ageMonths, dueOn, windowDays, state }) =>
    gluedOn === null || state === 'skipped'
      ? []
      : [{ key: keyOf(studyId, gluedOn), ageMonths, dueDay: dayOf(dueOn), windowDays }],
  )
}
