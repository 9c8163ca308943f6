// Held by tests/browser/formsRun.spec.ts.
const focusable =
  'a[href], button:not(:disabled), input:not(:disabled), select:not(:disabled), textarea:not(:disabled), [tabindex="0"]'

/** What stands around an element, from near to far. */
export function placesAround(element: Element): HTMLElement[] {
  const around: HTMLElement[] = []
  for (let place = element.parentElement; place !== null && place !== document.body; place = place.parentElement)
    around.push(place)
  return around
}

/** Puts the focus on the nearest place that is still there and holds something to go on with: on a page, its heading. */
export function focusInPlaceOf(around: readonly HTMLElement[]): void {
  for (const place of around) {
    if (!place.isConnected) continue
    // Around the page the first to be focused would be the link that skips to it
    const page = place.tagName === 'MAIN' ? place : place.querySelector<HTMLElement>('main')
    const next = page === null ? place.querySelector<HTMLElement>(focusable) : headingOf(page)
    if (next === null) continue
    next.focus()
    return
  }
}

/** Puts the focus on the heading of a place, from where reading goes on and single keys act; without one, on the place. */
export function focusHeading(place: HTMLElement): void {
  headingOf(place).focus({ preventScroll: true })
}

/** Whether the focus is where the program put it, on the page or on a heading, and no key or pointer has led it on. */
export function focusIsFree(): boolean {
  const has = document.activeElement
  return !(has instanceof HTMLElement) || has === document.body || has.tabIndex < 0
}

/** Puts the focus on the heading of what a field stands in, for one that is done with: single keys act again from there. */
export function focusSection(field: Element): void {
  const section = field.closest<HTMLElement>('section, main')
  if (section !== null) focusHeading(section)
}

function headingOf(place: HTMLElement): HTMLElement {
  const heading = place.querySelector<HTMLElement>('h1, h2') ?? place
  if (!heading.hasAttribute('tabindex')) heading.tabIndex = -1
  return heading
}
