import type { PullState } from '#contract/programme/pullProcedures.ts'
import { dayOf } from './calendarDay.ts'

/** What a pull is judged by. */
export type PullFacts = {
  dueOn: string
  /** Blocks of the pull count as of its age so many days before and after the day itself. */
  windowDays: number
  skipped: boolean
  /** Whether its blocks are glued; before that there is nothing to pull. */
  glued: boolean
  /** Blocks that wait on the shelf, and blocks that were broken; lost ones are neither. */
  waiting: number
  broken: number
}

/** A pull is announced so many days before its window opens. */
export const soonDays = 30

/**
 * How a pull stands on a day: `due` once its window is open, `late` after the day itself while the window is still open,
 * `missed` when the window has closed over blocks that still wait, or over none that was ever broken. `done`: no block waits
 * any more, and at least one was broken. Throws RangeError for what is no date.
 */
export function pullState(pull: PullFacts, today: string): PullState {
  if (pull.skipped) return 'skipped'
  if (pull.waiting === 0 && pull.broken > 0) return 'done'
  const daysPast = dayOf(today) - dayOf(pull.dueOn)
  if (daysPast < -pull.windowDays - soonDays || !pull.glued) return 'planned'
  if (daysPast < -pull.windowDays) return 'soon'
  if (daysPast <= 0) return 'due'
  return daysPast <= pull.windowDays ? 'late' : 'missed'
}
