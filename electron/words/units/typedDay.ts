/** What is said of a day that cannot be read. */
export const askForDay = 'Write the date as year-month-day.'

/** What is asked of the day on which something was done where it is still to come, both as ISO 8601 dates; null: nothing. */
export function stillToComeQuestion(day: string, today: string): string | null {
  return /^\d{4}-\d\d-\d\d$/.test(day) && day > today ? 'That day is still to come. Is the year right?' : null
}
