// Held by tests/browser/programme/studyRun.spec.ts.
import type { KeyboardEvent } from 'react'

/**
 * Enter in a line of a long form leads to the next one, so that nothing half filled is stored; whatever took the key keeps it, and
 * lines with `data-enter`, in which the key does something of its own, are passed over.
 */
export function goOnWithEnter(event: KeyboardEvent<HTMLElement>): void {
  const { target, currentTarget } = event
  if (
    event.key !== 'Enter' ||
    event.defaultPrevented ||
    !(target instanceof HTMLInputElement || target instanceof HTMLSelectElement)
  )
    return
  event.preventDefault()
  const fields = [
    ...currentTarget.querySelectorAll<HTMLElement>('input:not([type="hidden"], [data-enter]), select, textarea'),
  ]
  fields[fields.indexOf(target) + 1]?.focus()
}
