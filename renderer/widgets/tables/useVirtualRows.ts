// Held by tests/browser/longList.spec.ts.
import { type RefObject, useLayoutEffect, useState } from 'react'
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

/** Follows a scroller that holds `total` rows; a list of another key is shown from its top. */
export function useVirtualRows(
  scroller: RefObject<HTMLElement | null>,
  { total, listKey, onSight }: { total: number; listKey: string; onSight(first: number, last: number): void },
): VirtualRows {
  const [view, setView] = useState({ top: 0, height: 600, rowHeight: 40 })
  const { first, last } = rowsInSight(view.top, view.height, view.rowHeight, total, 12)

  useLayoutEffect(() => {
    const element = scroller.current
    if (element === null) return
    const measure = () => {
      const rowHeight = Number.parseFloat(getComputedStyle(document.documentElement).fontSize) * 2.5
      const head = element.querySelector('thead')?.clientHeight ?? 0
      setView({ top: element.scrollTop, height: element.clientHeight - head, rowHeight })
    }
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(element)
    return () => observer.disconnect()
  }, [scroller])

  useLayoutEffect(() => {
    if (scroller.current !== null) scroller.current.scrollTop = 0
  }, [scroller, listKey])

  useLayoutEffect(() => onSight(first, last), [first, last, onSight])

  return {
    first,
    last,
    height: view.height,
    rowHeight: view.rowHeight,
    onScroll: (top) => setView({ ...view, top }),
  }
}
