/** Whether a due date lies before the day of an instant. */
export function isOverdue(dueOn: string | null, instant: string): boolean {
  return dueOn !== null && instant.slice(0, 10) > dueOn
}
