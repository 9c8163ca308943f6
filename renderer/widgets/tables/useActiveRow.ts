// Held by tests/browser/longList.spec.ts.
import { type KeyboardEvent, type RefObject, useLayoutEffect, useRef, useState } from 'react'
import { focusIsFree } from '../focus/focusPlaces.ts'
import { placeIn, rememberPlace } from './listPlace.ts'
import type { RowSelection } from './RowSelection.tsx'
import type { VirtualRows } from './useVirtualRows.ts'
import { rowAfterKey, scrollToRow } from './virtualRows.ts'

/** The one row that keys act on: arrow keys, Page, Home and End move it, Enter opens it, Space and Shift pick. */
export function useActiveRow<Row>(
  scroller: RefObject<HTMLElement | null>,
  rows: VirtualRows,
  list: {
    label: string
    listKey: string
    total: number
    rowAt(index: number): Row | undefined
    onOpen(row: Row): void
    selection?: RowSelection<Row> | undefined
  },
) {
  const { label, listKey, total, rowAt, selection } = list
  const left = useRef(placeIn(label, listKey))
  const [active, setActive] = useState(left.current.active)
  // Whoever comes back from a record goes on from its row, if no key has led elsewhere before the rows are there
  const focusWanted = useRef<'return' | 'move' | null>(left.current.opened ? 'return' : null)
  const shownKey = useRef(listKey)
  /** Enter was pressed on a row that had not come yet: it opens when it comes, unless another key follows or the focus leaves it. */
  const openWanted = useRef<number | null>(null)
  /** The row whose box was ticked last; a click with Shift picks all from there. */
  const anchor = useRef(0)

  useLayoutEffect(() => {
    if (shownKey.current === listKey) return
    shownKey.current = listKey
    setActive(0)
  }, [listKey])

  useLayoutEffect(() => {
    if (focusWanted.current === null) return
    const row = scroller.current?.querySelector<HTMLElement>(`tr[data-index="${active}"]`)
    if (row) {
      if (focusWanted.current === 'move' || focusIsFree()) row.focus({ preventScroll: true })
      focusWanted.current = null
      rememberPlace(label, listKey, { opened: false })
    }
  })

  useLayoutEffect(() => {
    const index = openWanted.current
    const row = index === null ? undefined : rowAt(index)
    if (index === null || row === undefined) return
    openWanted.current = null
    if (document.activeElement === scroller.current?.querySelector(`tr[data-index="${index}"]`)) open(index, row)
  })

  function move(target: number, withShift: boolean): void {
    if (withShift) selection?.onExtend(active, target)
    setActive(target)
    focusWanted.current = 'move'
    const element = scroller.current
    if (element !== null) element.scrollTop = scrollToRow(target, element.scrollTop, rows.height, rows.rowHeight)
  }

  function open(index: number, row: Row): void {
    rememberPlace(label, listKey, { active: index, opened: true })
    list.onOpen(row)
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (selection !== undefined && (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'a') {
      event.preventDefault()
      selection.onAll()
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return
    openWanted.current = null
    const row = rowAt(active)
    const rowsPerScreen = Math.max(Math.floor(rows.height / rows.rowHeight) - 1, 1)
    const target = rowAfterKey(event.key, active, total, rowsPerScreen)
    if (event.key === ' ' && selection !== undefined) {
      if (row !== undefined) selection.onToggle(row)
      anchor.current = active
    } else if (event.key === 'Enter') {
      if (row === undefined) openWanted.current = active
      else open(active, row)
    } else if (target !== null) move(target, event.shiftKey)
    else return
    event.preventDefault()
  }

  return {
    /** The row that Tab reaches: the active one, or the nearest in sight. */
    stop: Math.min(Math.max(active, rows.first), Math.max(rows.last - 1, rows.first)),
    activate: setActive,
    onKeyDown,
    /** A row was clicked, or Enter pressed on it. */
    open,
    /** The box of a row was ticked. */
    tick(index: number, row: Row | undefined, withShift: boolean): void {
      if (withShift) selection?.onExtend(anchor.current, index)
      else if (row !== undefined) selection?.onToggle(row)
      anchor.current = index
    },
  }
}
