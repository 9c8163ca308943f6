const msPerDay = 86_400_000

/**
 * Days from 1 January 1970 to a date (UTC). Throws RangeError for what is no date of the calendar, 30 February among it, which
 * the language itself takes for 2 March.
 */
export function dayOf(isoDate: string): number {
  const ms = /^\d{4}-\d\d-\d\d$/.test(isoDate) ? Date.parse(isoDate) : Number.NaN
  if (!Number.isFinite(ms) || new Date(ms).toISOString().slice(0, 10) !== isoDate)
    throw new RangeError(`A date as 2031-08-31 is required, and "${isoDate}" is none`)
  return ms / msPerDay
}

/** 1 January 0 and 31 December 9999, the first and the last day that four digits of a year can name. */
const [firstDay, lastDay] = [-719_528, 2_932_896]

/**
 * The ISO 8601 date that lies so many days after 1 January 1970 (UTC). What lies beyond the dates of four digits is the last of
 * them: a slip in the year of one record must not take the calendar of all from a person.
 */
export function isoDayOf(day: number): string {
  return new Date(Math.min(Math.max(day, firstDay), lastDay) * msPerDay).toISOString().slice(0, 10)
}

/** The calendar day of an instant where the person is, by the time zone of this machine, as ISO 8601 date. */
export function localDayOf(instant: string): string {
  const here = new Date(instant)
  return isoDayOf(Date.UTC(here.getFullYear(), here.getMonth(), here.getDate()) / msPerDay)
}

/** The date so many days later, or earlier. Throws RangeError as dayOf. */
export function plusDays(isoDate: string, days: number): string {
  return isoDayOf(dayOf(isoDate) + days)
}
