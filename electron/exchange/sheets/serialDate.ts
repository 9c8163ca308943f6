const msPerDay = 86_400_000

/**
 * The day of a number of days as sheet programs count them, as an ISO date; null: there is no such day.
 *
 * From 1900, day 1 is 1 January 1900 and day 60 the 29 February 1900 that never was, so that later numbers are one too large;
 * from 1904, day 0 is 1 January 1904. A share of a day is a time, and is dropped.
 * Source: ECMA-376 part 1, 18.17.4.1. Checked: tests/exchange/sheets/serialDate.spec.ts against openpyxl.
 */
export function serialDate(days: number, from1904: boolean): string | null {
  const day = Math.floor(days)
  if (from1904) return isoDay(Date.UTC(1904, 0, 1) + day * msPerDay, day >= 0)
  if (day === 60) return null
  return isoDay(Date.UTC(1899, 11, day < 60 ? 31 : 30) + day * msPerDay, day >= 1)
}

/** Seconds of the day of such a number, to the nearest: its share of a day is seldom a whole one. Up to 86,400, at the end of the day. */
export function serialSecond(days: number): number {
  return Math.round((days - Math.floor(days)) * 86_400)
}

function isoDay(ms: number, counted: boolean): string | null {
  // 31 December 9999
  if (!counted || !(ms <= 253_402_214_400_000)) return null
  return new Date(ms).toISOString().slice(0, 10)
}
