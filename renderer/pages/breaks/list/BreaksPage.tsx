import type { BreakRow } from '#contract/breaks/break.ts'
import { breakRowLabel } from '#words/breaks/breakRowLabel.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { countOf } from '#words/units/counts.ts'
import { usePreferences } from '../../../host/hostContext.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { columnsShown } from '../../../parts/lists/columns/chosenColumns.ts'
import { asksAbout } from '../../../parts/lists/filter/filterForm.ts'
import { ListTools } from '../../../parts/lists/ListTools.tsx'
import { addressOfView } from '../../../parts/lists/listAddress.ts'
import { useListView } from '../../../parts/lists/listViewStore.ts'
import { usePagedList } from '../../../parts/lists/usePagedList.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { LongTable } from '../../../widgets/tables/LongTable.tsx'
import { type BreakSort, breakColumns } from './breakColumns.tsx'
import { SelectionBar } from './SelectionBar.tsx'
import { useBreakSelection } from './useBreakSelection.ts'

/** Every capture that was ever made, newest first. */
export function BreaksPage() {
  const [view, onView] = useListView('breaks', { sort: 'startedAt', descending: true })
  const list = usePagedList('breaks.list', view)
  const selection = useBreakSelection(view, list)
  const quantities = useQuantities()
  const sort = view.sort ?? 'startedAt'
  const descending = view.descending ?? true
  const narrowed = Boolean(view.text) || (view.status ?? 'all') !== 'all' || asksAbout(view.filter ?? {}) > 0
  const all = breakColumns(quantities)
  const shown = columnsShown(all, usePreferences().columns.breaks)
  return (
    <div className="list-page">
      <ListTools
        list="breaks"
        title="Breaks"
        view={view}
        onView={onView}
        total={list.pending && list.total === 0 ? '' : countOf(list.total, 'break')}
        withWaiting={false}
        columns={all}
      >
        <a className="button" href={hashOf({ page: 'reevaluations' })}>
          Re-evaluations
        </a>
      </ListTools>
      <Notice trouble={list.error ?? unreadableTrouble(list.newest?.unreadable)} />
      <LongTable<BreakRow, BreakSort>
        label="Breaks"
        listKey={addressOfView(view)}
        {...shown}
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
