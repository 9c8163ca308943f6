// Held by tests/browser/formsRun.spec.ts.
import { type RefObject, useEffect, useRef } from 'react'
import { placeKeyOf, type Route } from '../routes/route.ts'
import { focusHeading } from '../widgets/focus/focusPlaces.ts'

/**
 * Puts the focus on the heading of the page after going to another place, so that a screen reader begins there and single
 * keys act; on a page that still waits for its record, as soon as it has one. A form that is the page takes it itself.
 */
export function useRouteFocus(route: Route): RefObject<HTMLElement | null> {
  const main = useRef<HTMLElement>(null)
  const place = placeKeyOf(route)
  const before = useRef<string>(null)
  useEffect(() => {
    const page = main.current
    if (page === null || before.current === place) return
    before.current = place
    page.scrollTo(0, 0)
    const has = document.activeElement
    if (document.querySelector('dialog[open]') !== null || has?.closest('main form, main [data-first-focus]')) return
    focusHeading(page)
    const observer = new MutationObserver(() => {
      if (document.activeElement !== page) observer.disconnect()
      else if (page.querySelector('h1') !== null) focusHeading(page)
    })
    observer.observe(page, { childList: true, subtree: true })
    return () => observer.disconnect()
  }, [place])
  return main
}
