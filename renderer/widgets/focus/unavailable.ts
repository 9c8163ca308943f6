// Held by tests/browser/formsRun.spec.ts.
/**
 * Lets nothing happen on a control that is marked as unavailable with `aria-disabled`. Unlike one that is `disabled` it keeps
 * the focus while its work is under way, and can be reached and read out. Enter in a field clicks the button of its form, so
 * that is refused too.
 */
export function refuseUnavailable(): () => void {
  const refuse = (event: Event) => {
    if (!(event.target instanceof Element) || event.target.closest('[aria-disabled="true"]') === null) return
    event.preventDefault()
    event.stopImmediatePropagation()
  }
  window.addEventListener('click', refuse, true)
  return () => window.removeEventListener('click', refuse, true)
}
