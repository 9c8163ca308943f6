// Held by tests/browser/formsRun.spec.ts.
import { focusInPlaceOf, placesAround } from './focusPlaces.ts'

/**
 * Keeps the focus on the page: where what had it goes away, as a button whose work is done or a row that was taken out, it
 * passes to what stands in that place. Else it would fall to the body, and the next key would go nowhere.
 */
export function keepFocus(): () => void {
  let last: HTMLElement | null = null
  let around: HTMLElement[] = []
  const remember = ({ target }: FocusEvent) => {
    if (!(target instanceof HTMLElement) || target === document.body) return
    last = target
    around = placesAround(target)
  }
  const observer = new MutationObserver(() => {
    if (last === null || last.isConnected || document.activeElement !== document.body) return
    focusInPlaceOf(around)
  })
  document.addEventListener('focusin', remember)
  observer.observe(document.body, { childList: true, subtree: true })
  return () => {
    observer.disconnect()
    document.removeEventListener('focusin', remember)
  }
}
