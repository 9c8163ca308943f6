import { type KeyboardEvent, type ReactNode, useLayoutEffect, useRef, useState } from 'react'
import { HeadCheckbox, RowCheckbox, type RowSelection } from './RowSelection.tsx'
import { rowAfterKey, rowsInSight, scrollToRow } from './virtualRows.ts'

export type Column<Row, Sort extends string> = {
  key: string
  title: string
  /** Unit shown under the title. */
  unit?: string
  sort?: Sort
  numeric?: boolean
  width: string
  cell(row: Row): ReactNode
}

export type LongTableProps<Row, Sort extends string> = {
  label: string
  /** Another text means another list: it is shown from its top. */
  listKey: string
  columns: readonly Column<Row, Sort>[]
  total: number
  /** The row at an index, or undefined while it is on its way. */
  rowAt(index: number): Row | undefined
  onSight(first: number, last: number): void
  sort: Sort
  descending: boolean
  onSort(sort: Sort): void
  onOpen(row: Row): void
  /** How the row is named when it is read out. */
  rowLabel(row: Row): string
  empty: ReactNode
  /** Rows can be picked: by their boxes, with Space, with Shift and the arrow keys, all with Ctrl+A. */
  selection?: RowSelection<Row>
}

/** A table of any length: only the rows in sight are built. Arrow keys, Page, Home and End move; Enter opens. */
export function LongTable<Row, Sort extends string>(props: LongTableProps<Row, Sort>) {
  const { columns, total, rowAt, onSight, selection } = props
  const scroller = useRef<HTMLDivElement>(null)
  const [view, setView] = useState({ top: 0, height: 600, rowHeight: 40 })
  const [active, setActive] = useState(0)
  const focusWanted = useRef(false)
  /** The row whose box was ticked last; a click with Shift picks all from there. */
  const anchor = useRef(0)
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
  }, [])

  const shownKey = useRef(props.listKey)
  useLayoutEffect(() => {
    if (shownKey.current === props.listKey) return
    shownKey.current = props.listKey
    setActive(0)
    if (scroller.current !== null) scroller.current.scrollTop = 0
  }, [props.listKey])

  useLayoutEffect(() => onSight(first, last), [first, last, onSight])

  useLayoutEffect(() => {
    if (!focusWanted.current) return
    const row = scroller.current?.querySelector<HTMLElement>(`tr[data-index="${active}"]`)
    if (row) {
      row.focus({ preventScroll: true })
      focusWanted.current = false
    }
  })

  function onKeyDown(event: KeyboardEvent): void {
    if (selection !== undefined && (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 'a') {
      event.preventDefault()
      selection.onAll()
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const row = rowAt(active)
    if (event.key === ' ' && selection !== undefined) {
      event.preventDefault()
      if (row !== undefined) selection.onToggle(row)
      anchor.current = active
      return
    }
    if (event.key === 'Enter' && row !== undefined) {
      event.preventDefault()
      props.onOpen(row)
      return
    }
    const target = rowAfterKey(event.key, active, total, Math.max(Math.floor(view.height / view.rowHeight) - 1, 1))
    if (target === null) return
    event.preventDefault()
    if (event.shiftKey) selection?.onExtend(active, target)
    setActive(target)
    focusWanted.current = true
    const element = scroller.current
    if (element !== null) element.scrollTop = scrollToRow(target, element.scrollTop, view.height, view.rowHeight)
  }

  const indices = Array.from({ length: Math.max(last - first, 0) }, (_, i) => first + i)
  const allColumns = columns.length + (selection === undefined ? 0 : 1)
  const inSightActive = Math.min(Math.max(active, first), Math.max(last - 1, first))
  return (
    <div
      className="long-table"
      ref={scroller}
      onScroll={(event) => setView({ ...view, top: event.currentTarget.scrollTop })}
    >
      <table aria-label={props.label} aria-rowcount={total + 1}>
        <colgroup>
          {selection === undefined ? null : <col className="long-table-check" />}
          {columns.map((column) => (
            <col key={column.key} style={{ width: column.width }} />
          ))}
        </colgroup>
        <thead>
          <tr aria-rowindex={1}>
            {selection === undefined ? null : <HeadCheckbox selection={selection} total={total} />}
            {columns.map((column) => (
              <HeadCell key={column.key} column={column} {...props} />
            ))}
          </tr>
        </thead>
        <tbody>
          {first > 0 ? <Spacer height={first * view.rowHeight} columns={allColumns} /> : null}
          {indices.map((index) => {
            const row = rowAt(index)
            return (
              <tr
                key={index}
                data-index={index}
                aria-rowindex={index + 2}
                aria-label={row === undefined ? undefined : props.rowLabel(row)}
                data-picked={row !== undefined && selection?.isPicked(row) ? '' : undefined}
                tabIndex={index === inSightActive ? 0 : -1}
                onFocus={() => setActive(index)}
                onKeyDown={onKeyDown}
                onClick={() => row !== undefined && props.onOpen(row)}
              >
                {selection === undefined ? null : (
                  <RowCheckbox
                    row={row}
                    selection={selection}
                    onTick={(withShift) => {
                      if (withShift) selection.onExtend(anchor.current, index)
                      else if (row !== undefined) selection.onToggle(row)
                      anchor.current = index
                    }}
                  />
                )}
                {columns.map((column) => (
                  <td
                    key={column.key}
                    className={column.numeric ? 'numeric' : undefined}
                    onMouseEnter={(event) => tellWhatIsCut(event.currentTarget)}
                  >
                    {row === undefined ? <span className="long-table-coming">…</span> : column.cell(row)}
                  </td>
                ))}
              </tr>
            )
          })}
          {last < total ? <Spacer height={(total - last) * view.rowHeight} columns={allColumns} /> : null}
        </tbody>
      </table>
      {total === 0 ? <div className="long-table-empty">{props.empty}</div> : null}
    </div>
  )
}

/** A cell that is too narrow for its words says all of them when it is pointed at. */
function tellWhatIsCut(cell: HTMLElement): void {
  const cut = cell.scrollWidth > cell.clientWidth && cell.querySelector('[title]') === null
  cell.title = cut ? (cell.textContent ?? '') : ''
}

function Spacer({ height, columns }: { height: number; columns: number }) {
  return (
    <tr className="long-table-spacer">
      <td colSpan={columns} style={{ height }} />
    </tr>
  )
}

function HeadCell<Row, Sort extends string>({
  column,
  sort,
  descending,
  onSort,
}: { column: Column<Row, Sort> } & Pick<LongTableProps<Row, Sort>, 'sort' | 'descending' | 'onSort'>) {
  const name = (
    <>
      {column.title}
      {column.unit === undefined ? null : <span className="long-table-unit"> {column.unit}</span>}
    </>
  )
  const key = column.sort
  const className = column.numeric ? 'numeric' : undefined
  if (key === undefined)
    return (
      <th scope="col" className={className}>
        {name}
      </th>
    )
  const state = sort === key ? (descending ? 'descending' : 'ascending') : 'none'
  return (
    <th scope="col" className={className} aria-sort={state}>
      <button type="button" onClick={() => onSort(key)}>
        {name}
        <span className="long-table-arrow" aria-hidden="true">
          {state === 'ascending' ? '↑' : state === 'descending' ? '↓' : ''}
        </span>
      </button>
    </th>
  )
}
