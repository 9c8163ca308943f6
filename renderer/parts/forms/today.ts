import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'

/** The day that it is where the person is, as ISO 8601 date. */
export function today(): string {
  return localDayOf(new Date().toISOString())
}
