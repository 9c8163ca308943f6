import { localDayOf } from '../programme/calendar/calendarDay.ts'

/** Whether a due date lies before the day of an instant, where the person is. */
export function isOverdue(dueOn: string | null, instant: string): boolean {
  return dueOn !== null && localDayOf(instant) > dueOn
}
