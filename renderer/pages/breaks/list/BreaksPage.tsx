import type { BreakSummary } from '#contract/breaks/break.ts'
import { breakRowLabel } from '#words/breaks/breakRowLabel.ts'
import { setAsideWords } from '#words/breaks/decisionWords.ts'
import { flagListWords } from '#words/breaks/flagWords.ts'
import { outcomeWord } from '#words/breaks/outcomeWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { writeCount } from '#words/units/numbers.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { instantWords } from '#words/units/times.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { OverruledMark } from '../../../parts/decisions/OverruledMark.tsx'
import { ListTools } from '../../../parts/lists/ListTools.tsx'
import { useListView } from '../../../parts/lists/listViewStore.ts'
import { type ListView, usePagedList } from '../../../parts/lists/usePagedList.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { LongName } from '../../../widgets/tables/LongName.tsx'
import { type Column, LongTable } from '../../../widgets/tables/LongTable.tsx'
import { SelectionBar } from './SelectionBar.tsx'
import { useBreakSelection } from './useBreakSelection.ts'

type Sort = NonNullable<ListView['sort']>

/** Every capture that was ever made, newest first. */
export function BreaksPage() {
  const [view, onView] = useListView('breaks', { sort: 'startedAt', descending: true })
  const list = usePagedList('breaks.list', view)
  const selection = useBreakSelection(view, list)
  const quantities = useQuantities()
  const sort = view.sort ?? 'startedAt'
  const descending = view.descending ?? true
  const narrowed = Boolean(view.text) || (view.status ?? 'all') !== 'all'
  return (
    <div className="list-page">
      <ListTools
        title="Breaks"
        view={view}
        onView={onView}
        total={
          list.pending && list.total === 0 ? '' : list.total === 1 ? '1 break' : `${writeCount(list.total)} breaks`
        }
        withWaiting={false}
      >
        <a className="button" href={hashOf({ page: 'reevaluations' })}>
          {' '}
          Re-evaluations{' '}
        </a>
      </ListTools>
      <Notice trouble={list.error ?? unreadableTrouble(list.newest?.unreadable)} />
      <LongTable<BreakSummary, Sort>
        label="Breaks"
        listKey={JSON.stringify(view)}
        columns={columnsIn(quantities)}
        total={list.total}
        rowAt={list.rowAt}
        onSight={list.onSight}
        sort={sort}
        descending={descending}
        onSort={(next) => onView({ sort: next, descending: next === sort ? !descending : next === 'startedAt' })}
        onOpen={(row) => go({ page: 'break', breakId: row.breakId })}
        rowLabel={breakRowLabel}
        empty={list.pending ? '' : narrowed ? 'No break fits the search and filter.' : 'No breaks yet.'}
        selection={selection.rows}
      />
      <SelectionBar selection={selection} total={list.total} />
    </div>
  )
}

function columnsIn({ force, strength }: Quantities): Column<BreakSummary, Sort>[] {
  return [
    { key: 'when', title: 'When', sort: 'startedAt', width: '14%', cell: (row) => instantWords(row.startedAt) },
    {
      key: 'number',
      title: 'Specimen',
      sort: 'number',
      width: '13%',
      cell: (row) =>
        row.number === null ? (
          <span className="quiet">none</span>
        ) : (
          <strong>
            <LongName name={row.number} />
          </strong>
        ),
    },
    {
      key: 'adhesive',
      title: 'Adhesive',
      sort: 'adhesive',
      width: '15%',
      cell: (row) => <span title={row.adhesive ?? undefined}>{row.adhesive ?? ''}</span>,
    },
    {
      key: 'outcome',
      title: 'Outcome',
      width: '8%',
      cell: (row) => <span title={row.setAside === null ? undefined : setAsideWords(row)}>{outcomeWord(row)}</span>,
    },
    {
      key: 'peak',
      title: 'Peak',
      unit: force.unit,
      sort: 'peakN',
      numeric: true,
      width: '9%',
      cell: (row) => (
        <>
          <OverruledMark overruled={row.overruled} /> {force.number(row.peakN)}
        </>
      ),
    },
    {
      key: 'strength',
      title: 'Strength',
      unit: strength.unit,
      sort: 'strengthMPa',
      numeric: true,
      width: '10%',
      cell: (row) => strength.number(row.strengthMPa),
    },
    {
      key: 'wood',
      title: 'Wood f.',
      unit: '%',
      sort: 'woodFailurePercent',
      numeric: true,
      width: '8%',
      cell: (row) => row.woodFailurePercent ?? '–',
    },
    {
      key: 'flags',
      title: 'Remarks',
      width: '23%',
      cell: (row) => <span title={flagListWords(row)}>{flagListWords(row, 2)}</span>,
    },
  ]
}
