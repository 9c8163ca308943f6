/** What is said of a day that cannot be read. */
export const askForDay = 'Write the date as year-month-day.'
