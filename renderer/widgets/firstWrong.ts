/** Puts the focus on the first field of a form that is marked as wrong, once the page shows that it is. */
export function focusFirstWrong(form: HTMLFormElement | null): void {
  requestAnimationFrame(() => {
    const wrong = form?.querySelector<HTMLElement>('[data-wrong]')
    wrong?.querySelector<HTMLElement>('input:checked, input, select, textarea')?.focus()
  })
}
