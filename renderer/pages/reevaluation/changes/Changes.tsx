import type { ChangesPage, ResultChange } from '#contract/reevaluation/changes.ts'
import { standingWords } from '#words/reevaluation/changeWords.ts'
import { signedNumber, writeCount, writeFixed } from '#words/units/numbers.ts'
import { useQuantities } from '../../../host/useQuantities.ts'
import { usePagedList } from '../../../parts/lists/usePagedList.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { Choice } from '../../../widgets/Choice.tsx'
import { Notice } from '../../../widgets/Notice.tsx'
import { LongTable } from '../../../widgets/tables/LongTable.tsx'
import { type ChangesSort, changeColumns, changeLabel } from './changeColumns.tsx'
import './changes.css'
import { useKept } from '../../../parts/lists/useKept.ts'

const filters = [
  { value: 'all', label: 'All' },
  { value: 'changed', label: 'Changed' },
  { value: 'outcome', label: 'Outcome' },
  { value: 'peak', label: 'Peak' },
  { value: 'flags', label: 'Remarks' },
  { value: 'events', label: 'Events' },
] as const
type Filter = (typeof filters)[number]['value']

/** What the new results change: figures over all of them, and every break with its result before and now. */
export function Changes({ reevaluationId }: { reevaluationId: number }) {
  const quantities = useQuantities()
  const [only, setOnly] = useKept<Filter>(`filter of changes ${reevaluationId}`, 'changed')
  const [order, setOrder] = useKept<{ sort: ChangesSort; descending: boolean }>(`order of changes ${reevaluationId}`, {
    sort: 'difference',
    descending: true,
  })
  const view = { reevaluationId, only, ...order }
  const list = usePagedList('reevaluations.changes', view)
  return (
    <>
      {list.newest === null ? null : <ChangeFigures figures={list.newest.figures} />}
      <div className="changes-tools">
        <h2 id="changes-title">Changes</h2>
        <p className="quiet" aria-live="polite">
          {list.newest === null ? '' : `${writeCount(list.total)} shown`}
        </p>
        <Choice label="Show" labelHidden options={filters} value={only} onChange={(next) => setOnly(next)} />
      </div>
      {list.newest === null ? null : <Standing figures={list.newest.figures} />}
      <Notice trouble={list.error} />
      <LongTable<ResultChange, ChangesSort>
        label="Results before and after"
        listKey={JSON.stringify(view)}
        columns={changeColumns(quantities)}
        total={list.total}
        rowAt={list.rowAt}
        onSight={list.onSight}
        sort={order.sort}
        descending={order.descending}
        onSort={(sort) =>
          setOrder({ sort, descending: sort === order.sort ? !order.descending : sort === 'difference' })
        }
        onOpen={(row) => go({ page: 'break', breakId: row.breakId })}
        rowLabel={(row) => changeLabel(row, quantities)}
        empty={list.pending ? '' : only === 'changed' ? 'Every result is as it was.' : 'No result changed in this.'}
      />
    </>
  )
}

/** What no result changes: a person's word on a break. */
function Standing({ figures }: { figures: ChangesPage['figures'] }) {
  const words = standingWords(figures)
  return words === null ? null : <p className="changes-standing">{words}</p>
}

function ChangeFigures({ figures }: { figures: ChangesPage['figures'] }) {
  const { results } = figures
  const counts: [string, number][] = [
    ['Outcome', figures.outcomes],
    ['Peak', figures.peaks],
    ['Remarks', figures.flags],
    ['Events', figures.events],
  ]
  return (
    <dl className="change-figures">
      <div>
        <dt>Results</dt>
        <dd>{writeCount(results)}</dd>
      </div>
      {counts.map(([name, count]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            {writeCount(count)}{' '}
            <small>changed{count === 0 || results === 0 ? '' : `, ${shareWords(count / results)}`}</small>
          </dd>
        </div>
      ))}
      <div>
        <dt>Mean difference</dt>
        <dd>{percentWords(figures.meanDifferencePercent)}</dd>
      </div>
      <div>
        <dt>Largest difference</dt>
        <dd>{percentWords(figures.largestDifferencePercent)}</dd>
      </div>
    </dl>
  )
}

function shareWords(share: number): string {
  const percent = 100 * share
  return percent < 0.1 ? '< 0.1 %' : `${writeFixed(percent, percent < 9.95 ? 1 : 0)} %`
}

function percentWords(percent: number | null): string {
  return percent === null ? '–' : `${signedNumber(percent, Math.abs(percent) < 0.1 ? 3 : 2)} %`
}
