import { dayOf } from './calendar/calendarDay.ts'

/** Mean month of the Gregorian calendar, days: 146,097 days in 4800 months. */
const daysPerMonth = 146_097 / 4800

/**
 * Age of a specimen in whole months, to the nearest, so that a pull a few days early or late is still of its age.
 *
 *   round( days / 30.436875 )      days from the day of glue-up to the day of the test (UTC)
 *
 * Takes ISO 8601 dates or instants; of an instant the day alone counts. Throws RangeError for what is no date, 30 February among it.
 * Source: mean month of the Gregorian calendar; rounding: common practice, no source.
 * Checked: tests/domain/programme/ageMonths.spec.ts against Python's datetime.
 */
export function ageMonths(gluedOn: string, testedOn: string): number {
  const days = dayOf(testedOn.slice(0, 10)) - dayOf(gluedOn.slice(0, 10))
  // Adding 0 makes minus zero zero.
  return Math.round(days / daysPerMonth) + 0
}
