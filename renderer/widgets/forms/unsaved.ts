/** Something half written: where it stands, and whether leaving would lose it. */
export type Unsaved = { place(): Element | null; isUnsaved(): boolean; keptOnLeaving?: boolean }

const all = new Set<Unsaved>()

/** Watches over something that may be half written, until the returned function is called. */
export function watchUnsaved(one: Unsaved): () => void {
  all.add(one)
  return () => all.delete(one)
}

/**
 * Whether anything half written would be lost: within `place`, or anywhere. Going to another page (`leaving` 'page') loses
 * less than closing the window: what keeps itself when its page goes is not asked about.
 */
export function isAnythingUnsaved(leaving: 'page' | 'window', place: Element | null = null): boolean {
  return [...all].some(
    (one) =>
      (leaving === 'window' || one.keptOnLeaving !== true) &&
      (place === null || (one.place() !== null && place.contains(one.place()))) &&
      one.isUnsaved(),
  )
}

/** What the fields of a form say: typed texts, choices, switches and sliders. */
export function fieldValues(form: Element): Map<Element, string> {
  const fields = form.querySelectorAll('input, textarea, select, [role="slider"], [role="switch"]')
  return new Map([...fields].map((field) => [field, saidIn(field)]))
}

/** Whether a person changed something since; a field that came later counts once something is typed or chosen in it. */
export function areChanged(before: ReadonlyMap<Element, string>, now: ReadonlyMap<Element, string>): boolean {
  return [...now].some(([field, value]) => value !== (before.get(field) ?? (field.tagName === 'SELECT' ? value : '')))
}

/** Nothing typed and nothing chosen is ''. */
function saidIn(field: Element): string {
  if (field instanceof HTMLInputElement && (field.type === 'radio' || field.type === 'checkbox'))
    return field.checked ? 'chosen' : ''
  if (field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement || field instanceof HTMLSelectElement)
    return field.value
  return field.getAttribute('aria-valuetext') ?? field.getAttribute('aria-checked') ?? ''
}
