// Held by tests/browser/formsRun.spec.ts.
import { focusInPlaceOf, placesAround } from './focusPlaces.ts'

/** Gives the focus back to the element that has it now, or to what then stands in its place. Called where something takes it away for a while. */
export function rememberFocus(): () => void {
  const before = document.activeElement
  if (!(before instanceof HTMLElement) || before === document.body)
    return () => {
      if (document.activeElement === document.body) focusInPlaceOf([...document.querySelectorAll('main')])
    }
  const around = placesAround(before)
  // What goes away after it has the focus again is for `keepFocus`
  return () => (before.isConnected ? before.focus() : focusInPlaceOf(around))
}
