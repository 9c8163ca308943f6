import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'

// Made once: a list of ten thousand rows is searched by its dates too.
const days = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })
const instants = new Intl.DateTimeFormat('en-GB', {
  ...{ day: 'numeric', month: 'short', year: 'numeric' },
  ...{ hour: '2-digit', minute: '2-digit' },
})

const months = new Intl.DateTimeFormat('en-GB', { month: 'long' })
const utcDays = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' })
const utcInstants = new Intl.DateTimeFormat('en-GB', {
  ...{ day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' },
  ...{ hour: '2-digit', minute: '2-digit' },
})

/** A moment given in seconds since 1970, as its day in UTC: "25 Nov 2026". */
export function utcDayWords(unixS: number): string {
  return utcDays.format(unixS * 1000)
}

/** A moment given in seconds since 1970, in UTC: "25 Nov 2026, 14:05 UTC". */
export function utcInstantWords(unixS: number): string {
  return `${utcInstants.format(unixS * 1000)} UTC`
}

/** An instant for people, in local time: "25 Nov 2026, 14:05". */
export function instantWords(instant: string): string {
  return instants.format(new Date(instant))
}

/** The day of an instant, for tables and figures: "25 Nov 2026". */
export function dayWords(instant: string): string {
  return days.format(new Date(instant))
}

/** A day in every way in which people look for it: as tables show it, with the whole name of its month, and as ISO 8601 date. */
export function dayToFind(instant: string): string {
  return `${dayWords(instant)} ${months.format(new Date(instant))} ${localDayOf(instant)}`
}

/** The same of a day of the calendar, wherever the reader is; nothing of what is no day. */
export function calendarDayToFind(isoDate: string | null): string {
  const noon = `${isoDate}T12:00:00`
  return Number.isNaN(Date.parse(noon)) ? '' : dayToFind(noon)
}

/** How long ago, in whole steps that need no second look. */
export function ageWords(seconds: number): string {
  if (seconds < 60) return `${Math.max(Math.round(seconds), 0)} s`
  if (seconds < 5400) return `${Math.round(seconds / 60)} min`
  return `${Math.round(seconds / 3600)} h`
}
