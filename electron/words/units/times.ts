/** An instant for people, in local time: "25 Nov 2026, 14:05". */
export function instantWords(instant: string): string {
  return new Date(instant).toLocaleString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
    hour: '2-digit',
    minute: '2-digit',
  })
}

/** The day of an instant, for tables and figures: "25 Nov 2026". */
export function dayWords(instant: string): string {
  return new Date(instant).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })
}

/** How long ago, in whole steps that need no second look. */
export function ageWords(seconds: number): string {
  if (seconds < 60) return `${Math.max(Math.round(seconds), 0)} s`
  if (seconds < 5400) return `${Math.round(seconds / 60)} min`
  return `${Math.round(seconds / 3600)} h`
}
