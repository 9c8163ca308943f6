import { type KeyboardEvent, memo, useRef, useState } from 'react'
import type { Series, StudyFields } from '#contract/programme/study.ts'
import { seriesKey, seriesOf } from '#domain/programme/study/cells.ts'
import { ageWords, seriesWords } from '#words/programme/study/studyWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useQuantities } from '../../../../host/useQuantities.ts'
import { isSeriesLeftOut, toggleLeftOut } from './studyForm.ts'
import './groupsTable.css'

/** More rows than this are counted, not drawn. */
const mostRows = 120

/**
 * The groups of a study as a table, a row for each series and a column for each age: every cell is left out or taken back in by
 * a click, or by Space after arrow keys have led to it.
 */
export const GroupsTable = memo(function GroupsTable({
  plan,
  onLeftOut,
}: {
  plan: StudyFields
  onLeftOut(leftOut: StudyFields['leftOut']): void
}) {
  const { agesMonths, leftOut, blocksPerCell } = plan
  const all = seriesOf({ ...plan, leftOut: [] })
  const rows = all.slice(0, mostRows)
  const grid = useGridFocus(rows.length, agesMonths.length + 1)
  const made = madeIn(plan)
  return (
    <div className="groups-table">
      <table className="data-table" onKeyDown={grid.onKeyDown} ref={grid.table}>
        <caption>
          Blocks of each group. A cell or a whole row is left out, or taken back in, by a click or by Space.
        </caption>
        <thead>
          <tr>
            <th scope="col">Adhesive</th>
            <th scope="col">Made and kept as</th>
            {agesMonths.map((age) => (
              <th scope="col" key={age} className="numeric">
                {ageWords(age)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((series, row) => (
            <SeriesRow
              key={seriesKey(series)}
              {...{ series, row, agesMonths, blocksPerCell }}
              isWhollyOut={isSeriesLeftOut(leftOut, series)}
              isMade={(age) => made.has(`${age} ${seriesKey(series)}`)}
              tabIndexAt={grid.tabIndexAt}
              onToggle={(ageMonths) => onLeftOut(toggleLeftOut(leftOut, { ...series, ageMonths }))}
            />
          ))}
        </tbody>
      </table>
      {all.length > mostRows ? (
        <p className="quiet">{countOf(all.length - mostRows, 'more series', 'more series')}.</p>
      ) : null}
    </div>
  )
})

function SeriesRow({
  series,
  row,
  agesMonths,
  blocksPerCell,
  isWhollyOut,
  isMade,
  tabIndexAt,
  onToggle,
}: {
  series: Series
  row: number
  agesMonths: readonly number[]
  blocksPerCell: number
  isWhollyOut: boolean
  isMade(age: number): boolean
  tabIndexAt(row: number, column: number): number
  onToggle(ageMonths: number | null): void
}) {
  const quantities = useQuantities()
  const words = seriesWords(series, quantities)
  const place = (column: number) => ({
    type: 'button' as const,
    'data-place': `${row} ${column}`,
    tabIndex: tabIndexAt(row, column),
  })
  return (
    <tr>
      <th scope="row">
        <button
          {...place(0)}
          className="group-row"
          aria-pressed={!isWhollyOut}
          aria-label={`${series.adhesive}, ${words}: the whole row`}
          onClick={() => onToggle(null)}
        >
          {series.adhesive}
        </button>
      </th>
      <td>{words}</td>
      {agesMonths.map((age, index) => (
        <td key={age} className="numeric">
          <button
            {...place(index + 1)}
            className="group-cell"
            aria-pressed={isMade(age)}
            aria-label={`${isMade(age) ? blocksPerCell : '–'}: ${series.adhesive}, ${words}, ${ageWords(age)}`}
            aria-disabled={isWhollyOut}
            onClick={() => !isWhollyOut && onToggle(age)}
          >
            {isMade(age) ? blocksPerCell : '–'}
          </button>
        </td>
      ))}
    </tr>
  )
}

function madeIn({ leftOut, ...plan }: StudyFields): Set<string> {
  const out = new Set(leftOut.map((one) => `${one.ageMonths} ${seriesKey(one)}`))
  return new Set(
    seriesOf({ ...plan, leftOut: [] })
      .map(seriesKey)
      .filter((series) => !out.has(`null ${series}`))
      .flatMap((series) => plan.agesMonths.map((age) => `${age} ${series}`))
      .filter((cell) => !out.has(cell)),
  )
}

/** One cell of a grid can be reached by Tab, the others from it by arrow keys. */
function useGridFocus(rows: number, columns: number) {
  const table = useRef<HTMLTableElement>(null)
  const [at, setAt] = useState({ row: 0, column: 0 })
  const here = { row: Math.min(at.row, rows - 1), column: Math.min(at.column, columns - 1) }

  function onKeyDown(event: KeyboardEvent): void {
    const place = (event.target as HTMLElement).dataset.place?.split(' ').map(Number)
    if (place === undefined) return
    const [row = 0, column = 0] = place
    const next = moved(event.key, { row, column })
    if (next === null) return
    event.preventDefault()
    const found = {
      row: Math.max(0, Math.min(next.row, rows - 1)),
      column: Math.max(0, Math.min(next.column, columns - 1)),
    }
    setAt(found)
    table.current?.querySelector<HTMLElement>(`[data-place="${found.row} ${found.column}"]`)?.focus()
  }

  return {
    table,
    onKeyDown,
    tabIndexAt: (row: number, column: number) => (row === here.row && column === here.column ? 0 : -1),
  }
}

function moved(key: string, { row, column }: { row: number; column: number }): { row: number; column: number } | null {
  if (key === 'ArrowUp') return { row: row - 1, column }
  if (key === 'ArrowDown') return { row: row + 1, column }
  if (key === 'ArrowLeft') return { row, column: column - 1 }
  if (key === 'ArrowRight') return { row, column: column + 1 }
  if (key === 'Home') return { row, column: 0 }
  if (key === 'End') return { row, column: Number.MAX_SAFE_INTEGER }
  return null
}
