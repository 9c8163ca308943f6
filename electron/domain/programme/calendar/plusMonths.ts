import { dayOf, isoDayOf } from './calendarDay.ts'

/**
 * The day so many months after another: the same day of the month, or the last one where that month is shorter. It is always
 * counted from the day of the start, never from a day counted before, so that 31 August comes back to the 31st.
 *
 *   31 August 2031 + 6 months = 29 February 2032     31 August 2031 + 12 months = 31 August 2032
 *
 * Takes an ISO 8601 date and whole months; the calendar is the Gregorian one, days are those of UTC. Throws RangeError for what
 * is no date or no whole number; what would lie beyond the year 9999 is its last day. Source: common practice (the last day of a shorter month), stated here.
 * Checked: tests/domain/programme/calendar/plusMonths.spec.ts against python-dateutil.
 */
export function plusMonths(isoDate: string, months: number): string {
  if (!Number.isInteger(months)) throw new RangeError(`plusMonths requires whole months, not ${months}`)
  const start = new Date(dayOf(isoDate) * 86_400_000)
  const [year, month] = [start.getUTCFullYear(), start.getUTCMonth() + months]
  const lastOfMonth = utcDate(year, month + 1, 0).getUTCDate()
  return isoDayOf(utcDate(year, month, Math.min(start.getUTCDate(), lastOfMonth)).getTime() / 86_400_000)
}

/** Years below 100 stand for themselves, which Date.UTC takes for those of the twentieth century. */
function utcDate(year: number, month: number, day: number): Date {
  const date = new Date(0)
  date.setUTCFullYear(year, month, day)
  return date
}
