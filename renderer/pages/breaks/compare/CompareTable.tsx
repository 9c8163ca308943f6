import { Fragment, type KeyboardEvent, useLayoutEffect, useRef } from 'react'
import { writeFixed } from '#words/units/numbers.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { OverruledMark } from '../../../parts/decisions/OverruledMark.tsx'
import { hashOf } from '../../../routes/route.ts'
import { rowAfterKey } from '../../../widgets/tables/virtualRows.ts'
import type { CompareRow, RowOrder } from './compareRows.ts'
import { OutlyingShape } from './OutlyingShape.tsx'

export type CompareTableProps = {
  rows: readonly CompareRow[]
  /** Not where one adhesive is common to all and stands above the page. */
  withAdhesive: boolean
  distance: Pick<Quantity, 'unit' | 'number'>
  /** The words for an outlying curve; empty for any other. */
  wordsOf(row: CompareRow): string
  chosen: number | null
  pointed: number | null
  order: RowOrder
  descending: boolean
  onOrder(order: RowOrder): void
  onChoose(breakId: number): void
  onPoint(breakId: number | null): void
  onOpen(breakId: number): void
  onTakeOut(breakId: number): void
}

type Column = {
  order: RowOrder | null
  title: string
  numeric: boolean
  width: string
  explained?: string
}

const adhesiveColumn: Column = { order: null, title: 'Adhesive', numeric: false, width: '19.5%' }
const figureColumns: readonly Column[] = [
  { order: 'peak', title: 'Peak', numeric: true, width: '12%' },
  { order: null, title: 'Strength', numeric: true, width: '17%' },
  { order: 'time', title: 'To peak', numeric: true, width: '12.5%' },
  {
    order: 'distance',
    title: 'Distance',
    numeric: true,
    width: '16%',
    explained: 'From the median while the specimen is loaded, root mean square',
  },
]

function columnsFor(withAdhesive: boolean): readonly Column[] {
  const specimen: Column = { order: 'name', title: 'Specimen', numeric: false, width: withAdhesive ? '17.5%' : '37%' }
  return withAdhesive ? [specimen, adhesiveColumn, ...figureColumns] : [specimen, ...figureColumns]
}

/** The compared breaks. Arrow keys go from curve to curve, Enter opens the break, Delete takes it out of the comparison. */
export function CompareTable(props: CompareTableProps) {
  const { rows, withAdhesive, chosen } = props
  const columns = columnsFor(withAdhesive)
  const body = useRef<HTMLTableElement>(null)
  const focusWanted = useRef(false)
  const stop = Math.max(
    rows.findIndex(({ breakId }) => breakId === chosen),
    0,
  )

  // The curve that was chosen in the plot comes into sight here.
  useLayoutEffect(() => {
    const row = body.current?.querySelector<HTMLElement>(`tr[data-break="${chosen}"]`)
    row?.scrollIntoView({ block: 'nearest' })
    if (focusWanted.current) row?.focus({ preventScroll: true })
    focusWanted.current = false
  }, [chosen])

  function onKeyDown(event: KeyboardEvent, index: number, row: CompareRow): void {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target !== event.currentTarget) return
    const next = rowAfterKey(event.key, index, rows.length, 8)
    const target = next === null ? undefined : rows[next]
    if (target !== undefined) {
      focusWanted.current = target.breakId !== chosen
      props.onChoose(target.breakId)
    } else if (event.key === 'Enter') props.onOpen(row.breakId)
    else if (event.key === 'Delete') {
      const heir = rows[index + 1] ?? rows[index - 1]
      focusWanted.current = heir !== undefined
      if (heir !== undefined) props.onChoose(heir.breakId)
      props.onTakeOut(row.breakId)
    } else return
    event.preventDefault()
  }

  return (
    <div className="compare-table">
      <table ref={body} aria-label="Compared breaks">
        <colgroup>
          {columns.map(({ title, width }) => (
            <col key={title} style={{ width }} />
          ))}
          <col />
        </colgroup>
        <CompareHead columns={columns} {...props} />
        <tbody>
          {rows.map((row, index) => {
            const words = props.wordsOf(row)
            return (
              <Fragment key={row.breakId}>
                <tr
                  data-index={index}
                  data-break={row.breakId}
                  data-chosen={row.breakId === chosen ? '' : undefined}
                  data-worded={words === '' ? undefined : ''}
                  data-pointed={row.breakId === props.pointed ? '' : undefined}
                  aria-current={row.breakId === chosen ? 'true' : undefined}
                  tabIndex={index === stop ? 0 : -1}
                  onFocus={(event) => event.target === event.currentTarget && props.onChoose(row.breakId)}
                  onClick={() => props.onChoose(row.breakId)}
                  onMouseEnter={() => props.onPoint(row.breakId)}
                  onMouseLeave={() => props.onPoint(null)}
                  onKeyDown={(event) => onKeyDown(event, index, row)}
                >
                  <CompareCells row={row} {...props} />
                </tr>
                {words === '' ? null : (
                  <tr className="compare-words" data-chosen={row.breakId === chosen ? '' : undefined}>
                    <td colSpan={columns.length + 1}>
                      <OutlyingShape /> {words}
                    </td>
                  </tr>
                )}
              </Fragment>
            )
          })}
        </tbody>
      </table>
    </div>
  )
}

/** What the columns are, and the order that they can be put in. */
function CompareHead({ columns, ...props }: CompareTableProps & { columns: readonly Column[] }) {
  const { order, descending } = props
  const { force, strength } = useQuantities()
  const units: Record<string, string> = {
    Peak: force.unit,
    Strength: strength.unit,
    'To peak': 's',
    Distance: props.distance.unit,
  }
  return (
    <thead>
      <tr>
        {columns.map(({ order: by, title, numeric, explained }) => (
          <th
            key={title}
            scope="col"
            title={explained}
            className={numeric ? 'numeric' : undefined}
            aria-sort={by === null ? undefined : by !== order ? 'none' : descending ? 'descending' : 'ascending'}
          >
            {by === null ? title : <SortButton title={title} by={by} {...props} />}
            {units[title] === undefined ? null : <span className="long-table-unit"> {units[title]}</span>}
          </th>
        ))}
        <th scope="col">
          <span className="visually-hidden">Take out</span>
        </th>
      </tr>
    </thead>
  )
}

/** The cells of one break. */
function CompareCells({
  row,
  withAdhesive,
  distance,
  onTakeOut,
}: { row: CompareRow } & Pick<CompareTableProps, 'withAdhesive' | 'distance' | 'onTakeOut'>) {
  const { force, strength } = useQuantities()
  return (
    <>
      <th scope="row">
        <a href={hashOf({ page: 'break', breakId: row.breakId })} tabIndex={-1}>
          {row.name}
        </a>
        {row.standing === '' ? null : <span className="compare-aside">{row.standing}</span>}
      </th>
      {withAdhesive ? (
        <td className="compare-adhesive" title={row.adhesive ?? undefined}>
          <span>{row.adhesive ?? '–'}</span>
        </td>
      ) : null}
      <td className="numeric">
        <OverruledMark overruled={row.overruled} /> {force.number(row.peakN)}
      </td>
      <td className="numeric">{strength.number(row.strengthMPa)}</td>
      <td className="numeric">{row.timeToPeakS === null ? '–' : writeFixed(row.timeToPeakS, 2)}</td>
      <td className="numeric" title={scoreWords(row)}>
        {distance.number(row.curve.distance)}
      </td>
      <td className="compare-out">
        <button
          type="button"
          className="button button-quiet button-small"
          tabIndex={-1}
          aria-label={`Take ${row.name} out of the comparison`}
          title="Take out of the comparison (Delete)"
          onClick={(event) => {
            event.stopPropagation()
            onTakeOut(row.breakId)
          }}
        >
          ×
        </button>
      </td>
    </>
  )
}

function scoreWords({ curve }: CompareRow): string | undefined {
  if (curve.zScore === null) return undefined
  return `Modified z-score of the distance ${writeFixed(curve.zScore, 1)}: above 3.5 a curve is pointed out`
}

function SortButton({
  title,
  by,
  order,
  descending,
  onOrder,
}: { title: string; by: RowOrder } & Pick<CompareTableProps, 'order' | 'descending' | 'onOrder'>) {
  return (
    <button type="button" onClick={() => onOrder(by)}>
      {title}
      <span className="long-table-arrow" aria-hidden="true">
        {by !== order ? '' : descending ? '↓' : '↑'}
      </span>
    </button>
  )
}
