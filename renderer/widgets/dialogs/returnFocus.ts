// Held by tests/browser/keyboardRun.spec.ts.
const focusable = 'a[href], button:not(:disabled), input:not(:disabled), select, textarea, [tabindex="0"]'

/** Gives the focus back to the element that has it now, or to what then stands in its place. Called where something takes it away for a while. */
export function rememberFocus(): () => void {
  const before = document.activeElement
  if (!(before instanceof HTMLElement) || before === document.body) return () => {}
  const around: HTMLElement[] = []
  for (let place = before.parentElement; place !== null && place !== document.body; place = place.parentElement)
    around.push(place)
  return () => {
    if (!before.isConnected) return focusInPlaceOf(around)
    before.focus()
    // What was done may take away the very button that began it, a moment later
    const watch = new MutationObserver(() => {
      if (before.isConnected) return
      end()
      if (document.activeElement === document.body) focusInPlaceOf(around)
    })
    const end = () => {
      watch.disconnect()
      document.removeEventListener('focusin', end)
    }
    watch.observe(document.body, { childList: true, subtree: true })
    document.addEventListener('focusin', end)
  }
}

/** The nearest place that is still there and holds something to go on with. */
function focusInPlaceOf(around: readonly HTMLElement[]): void {
  for (const place of around) {
    if (!place.isConnected) continue
    const next = place.tagName === 'MAIN' ? place : place.querySelector<HTMLElement>(focusable)
    if (next === null) continue
    next.focus()
    return
  }
}
