import { type ReactNode, useRef } from 'react'
import { HeadCheckbox, RowCheckbox, type RowSelection } from './RowSelection.tsx'
import { useActiveRow } from './useActiveRow.ts'
import { useVirtualRows } from './useVirtualRows.ts'

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
  /** Another text means another list: it is shown from its top, and the same one where it was left. */
  listKey: string
  columns: readonly Column<Row, Sort>[]
  /** How wide the table is at least; it is scrolled sideways where there is less room. */
  minWidth?: string | undefined
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
  const { columns, total, rowAt, selection } = props
  const scroller = useRef<HTMLDivElement>(null)
  const rows = useVirtualRows(scroller, props)
  const active = useActiveRow(scroller, rows, props)
  const { first, last, rowHeight } = rows
  const indices = Array.from({ length: Math.max(last - first, 0) }, (_, i) => first + i)
  const allColumns = columns.length + (selection === undefined ? 0 : 1)
  return (
    <div className="long-table" ref={scroller} onScroll={(event) => rows.onScroll(event.currentTarget.scrollTop)}>
      <table aria-label={props.label} aria-rowcount={total + 1} style={{ minWidth: props.minWidth }}>
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
          {first > 0 ? <Spacer height={first * rowHeight} columns={allColumns} /> : null}
          {indices.map((index) => {
            const row = rowAt(index)
            return (
              <tr
                key={index}
                data-index={index}
                aria-rowindex={index + 2}
                aria-label={row === undefined ? undefined : props.rowLabel(row)}
                data-picked={row !== undefined && selection?.isPicked(row) ? '' : undefined}
                tabIndex={index === active.stop ? 0 : -1}
                onFocus={() => active.activate(index)}
                onKeyDown={active.onKeyDown}
                onClick={() => row !== undefined && active.open(index, row)}
              >
                {selection === undefined ? null : (
                  <RowCheckbox
                    row={row}
                    selection={selection}
                    onTick={(withShift) => active.tick(index, row, withShift)}
                  />
                )}
                <Cells row={row} columns={columns} />
              </tr>
            )
          })}
          {last < total ? <Spacer height={(total - last) * rowHeight} columns={allColumns} /> : null}
        </tbody>
      </table>
      {total === 0 ? <div className="long-table-empty">{props.empty}</div> : null}
    </div>
  )
}

function Cells<Row, Sort extends string>({
  row,
  columns,
}: { row: Row | undefined } & Pick<LongTableProps<Row, Sort>, 'columns'>) {
  return columns.map((column) => (
    <td
      key={column.key}
      className={column.numeric ? 'numeric' : undefined}
      onMouseEnter={(event) => tellWhatIsCut(event.currentTarget)}
    >
      {row === undefined ? <span className="long-table-coming">…</span> : column.cell(row)}
    </td>
  ))
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
