// Held by tests/browser/findings/findingsKeys.spec.ts.

/** The mark by which the blocks of one group at one age are found on the page. */
export function blocksPlace(group: string, ageMonths: number | null): string {
  return `blocks-${encodeURIComponent(group)}-${ageMonths}`
}

/** Opens the blocks of a group at an age and goes there. */
export function goToBlocks(group: string, ageMonths: number | null): void {
  const place = document.getElementById(blocksPlace(group, ageMonths))
  if (!(place instanceof HTMLDetailsElement)) return
  place.open = true
  place.querySelector('summary')?.focus()
}
