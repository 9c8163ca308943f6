// Held by tests/browser/longList.spec.ts.
import { type RefObject, useLayoutEffect, useRef, useState } from 'react'
import { placeIn, rememberPlace } from './listPlace.ts'
import { rowsInSight } from './virtualRows.ts'

/** The rows in sight of a scroller, with some to spare, and how it is measured. Heights in CSS pixels. */
export type VirtualRows = {
  first: number
  last: number
  height: number
  rowHeight: number
  /** The scroller was moved. */
  onScroll(top: number): void
}

/** Follows a scroller that holds `total` rows: a list is shown where it was left, one of another key from its top. */
export function useVirtualRows(
  scroller: RefObject<HTMLElement | null>,
  {
    label,
    total,
    listKey,
    onSight,
  }: { label: string; total: number; listKey: string; onSight(first: number, last: number): void },
): VirtualRows {
  const [view, setView] = useState(() => ({ top: placeIn(label, listKey).topPx, height: 600, rowHeight: 40 }))
  /** Where it was left, until there are rows enough to scroll there. */
  const wantedTop = useRef(view.top)
  const shownKey = useRef(listKey)
  const { first, last } = rowsInSight(view.top, view.height, view.rowHeight, total, 12)

  useLayoutEffect(() => {
    const element = scroller.current
    if (element === null) return
    const measure = () => {
      const rowHeight = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) * 2.5
      const head = element.querySelector('thead')?.clientHeight ?? 0
      setView({ top: wantedTop.current || element.scrollTop, height: element.clientHeight - head, rowHeight })
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [scroller])

  useLayoutEffect(() => {
    if (shownKey.current === listKey) return
    shownKey.current = listKey
    wantedTop.current = 0
    if (scroller.current !== null) scroller.current.scrollTop = 0
  }, [scroller, listKey])

  useLayoutEffect(() => {
    if (total === 0 || wantedTop.current === 0) return
    if (scroller.current !== null) scroller.current.scrollTop = wantedTop.current
    wantedTop.current = 0
  }, [scroller, total])

  useLayoutEffect(() => onSight(first, last), [first, last, onSight])

  return {
    first,
    last,
    height: view.height,
    rowHeight: view.rowHeight,
    onScroll(top) {
      if (wantedTop.current === 0) rememberPlace(label, listKey, { topPx: top })
      setView({ ...view, top })
    },
  }
}
