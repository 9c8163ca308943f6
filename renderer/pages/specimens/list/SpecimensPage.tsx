import { useCallback } from 'react'
import type { SpecimenSummary } from '#contract/specimens/specimenRecord.ts'
import { overruledWords } from '#words/breaks/decisionWords.ts'
import { isSimulated, simulatedMark } from '#words/keeping/demoWords.ts'
import { unreadableTrouble } from '#words/keeping/unreadableWords.ts'
import { resultsWords } from '#words/specimens/resultsWords.ts'
import { peakOnlyMark } from '#words/specimens/typedResultWords.ts'
import { countOf } from '#words/units/counts.ts'
import { useBench, useHost, usePreferences } from '../../../host/hostContext.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { columnsShown } from '../../../parts/lists/columns/chosenColumns.ts'
import { asksAbout } from '../../../parts/lists/filter/filterForm.ts'
import { ListTools } from '../../../parts/lists/ListTools.tsx'
import { addressOfView } from '../../../parts/lists/listAddress.ts'
import { useListView } from '../../../parts/lists/listViewStore.ts'
import { specimenSelection } from '../../../parts/lists/selectionStore.ts'
import { usePagedList } from '../../../parts/lists/usePagedList.ts'
import { useRowSelection } from '../../../parts/lists/useRowSelection.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { hashOf } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import { LongTable } from '../../../widgets/tables/LongTable.tsx'
import { SpecimenActs } from './SpecimenActs.tsx'
import { type SpecimenSort, specimenColumns } from './specimenColumns.tsx'

/** Every specimen, with its break in force if it has one. */
export function SpecimensPage() {
  const [view, onView] = useListView('specimens', { sort: 'number' })
  const list = usePagedList('specimens.list', view)
  const { client } = useHost()
  const askIds = useCallback(() => client.call('specimens.ids', view), [client, view])
  const selection = useRowSelection({
    ...{ selection: specimenSelection, rowAt: list.rowAt, idOf: specimenIdOf, askIds },
    boxLabel: (row) => `Select specimen ${row.fields.number}`,
  })
  const quantities = useQuantities()
  const { specimen: atHand } = useBench()
  const all = specimenColumns(quantities, atHand?.specimenId ?? null)
  const shown = columnsShown(all, usePreferences().columns.specimens)
  const sort = view.sort ?? 'number'
  const descending = view.descending ?? false
  const narrowed = Boolean(view.text) || (view.status ?? 'all') !== 'all' || asksAbout(view.filter ?? {}) > 0
  return (
    <div className="list-page">
      <ListTools
        list="specimens"
        title="Specimens"
        view={view}
        onView={onView}
        total={list.pending && list.total === 0 ? '' : countOf(list.total, 'specimen')}
        withWaiting
        columns={all}
      >
        <a className="button" href={hashOf({ page: 'import' })}>
          Import
        </a>
        <a className="button" href={hashOf({ page: 'readings' })}>
          Dial readings
        </a>
        <a className="button" href={hashOf({ page: 'glue-ups' })}>
          Glue-ups
        </a>
        <a className="button" href={hashOf({ page: 'catalogue' })}>
          Catalogue
        </a>
        <a className="button button-primary" href={hashOf({ page: 'new-specimen' })}>
          Add specimen
        </a>
      </ListTools>
      <Notice trouble={list.error ?? unreadableTrouble(list.newest?.unreadable)} />
      <LongTable<SpecimenSummary, SpecimenSort>
        label="Specimens"
        listKey={addressOfView(view)}
        {...shown}
        total={list.total}
        rowAt={list.rowAt}
        onSight={list.onSight}
        sort={sort}
        descending={descending}
        onSort={(next) => onView({ sort: next, descending: next === sort ? !descending : false })}
        onOpen={(row) => go({ page: 'specimen', specimenId: row.specimenId })}
        rowLabel={specimenRowLabel}
        empty={
          list.pending ? (
            ''
          ) : narrowed ? (
            'No specimen fits the search and filter.'
          ) : (
            <>
              No specimens yet. <a href={hashOf({ page: 'new-specimen' })}>Add the first one</a>.
            </>
          )
        }
        selection={selection.rows}
      />
      <SpecimenActs selection={selection} total={list.total} />
    </div>
  )
}

const specimenIdOf = ({ specimenId }: SpecimenSummary) => specimenId

/** How a row is read out: with the reason where a person overruled the peak that counts. */
function specimenRowLabel({ fields, named, breakInForce, typedResultInForce, results }: SpecimenSummary): string {
  const simulated = isSimulated(breakInForce ?? fields) ? `, ${simulatedMark}` : ''
  const several = resultsWords(results)
  const words = `${fields.number}, ${named.adhesive}${simulated}${several === null ? '' : `, ${several}`}${typedResultInForce === null ? '' : `, ${peakOnlyMark}`}`
  const overruled = breakInForce?.overruled ?? null
  return overruled === null ? words : `${words}, ${overruledWords(overruled)}`
}
