const days = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' })

/** A day of the calendar for people, the same in every time zone: "31 Aug 2031". */
export function calendarDayWords(isoDate: string): string {
  return days.format(new Date(`${isoDate}T00:00:00Z`))
}

/** An age in the steps in which people count it: "at once", "6 months", "2 years", "18 months". */
export function ageInMonthsWords(months: number): string {
  if (months === 0) return 'at once'
  if (months % 12 === 0) return months === 12 ? '1 year' : `${months / 12} years`
  return months === 1 ? '1 month' : `${months} months`
}
