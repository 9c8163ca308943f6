// Held by tests/browser/formsRun.spec.ts.
const fields = 'input:not([type="hidden"]), select, textarea, [role="slider"]'

/**
 * Puts the focus on the first field of a form or dialog, or on what is marked to be first; `selecting`: and selects what stands in
 * it, so that typing replaces it. False: there is none.
 */
export function focusFirstField(place: Element, selecting = false): boolean {
  const first = place.querySelector<HTMLElement>('[data-first-focus]') ?? firstOf(place)
  first?.focus()
  if (selecting && first instanceof HTMLInputElement) first.select()
  return first !== null
}

/** In a group of choices the focus belongs to the one that is chosen. */
function firstOf(place: Element): HTMLElement | null {
  const first = place.querySelector<HTMLElement>(fields)
  if (!(first instanceof HTMLInputElement) || first.type !== 'radio') return first
  return place.querySelector<HTMLElement>(`input[name="${CSS.escape(first.name)}"]:checked`) ?? first
}

/** The page shows what is wrong within so many frames, or nothing is. */
const mostFrames = 10

/** Puts the focus on the first field of a form that is marked as wrong, once the page shows that it is. */
export function focusFirstWrong(form: Element | null, frames = mostFrames): void {
  requestAnimationFrame(() => {
    const wrong = form?.querySelector<HTMLElement>('[data-wrong]')
    if (wrong) wrong.querySelector<HTMLElement>('input:checked, input, select, textarea, button')?.focus()
    else if (frames > 1) focusFirstWrong(form, frames - 1)
  })
}
