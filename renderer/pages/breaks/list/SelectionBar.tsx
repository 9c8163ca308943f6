import { writeCount } from '#words/units/numbers.ts'
import { go } from '../../../parts/routing/useRoute.ts'
import { mostCompared } from '../../../routes/route.ts'
import { Notice } from '../../../widgets/Notice.tsx'
import type { BreakSelection } from './useBreakSelection.ts'

/** How many breaks are selected, and what can be done with them. */
export function SelectionBar({ selection, total }: { selection: BreakSelection; total: number }) {
  const { ids: breakIds, rows, error } = selection
  if (breakIds.length === 0) return <Notice trouble={error} />
  const tooMany = breakIds.length > mostCompared
  return (
    <section className="selection-bar" aria-label="Selected breaks">
      <Notice trouble={error} />
      <p aria-live="polite">
        <strong>{writeCount(breakIds.length)}</strong> selected
      </p>
      <button type="button" className="button button-quiet" onClick={rows.onNone}>
        Select none
      </button>
      {breakIds.length < total ? (
        <button type="button" className="button button-quiet" onClick={rows.onAll}>
          Select all {writeCount(total)} found{' '}
        </button>
      ) : null}
      {tooMany ? <p className="quiet">At most {mostCompared} are compared at once.</p> : null}
      <span className="selection-actions">
        <button
          type="button"
          className="button"
          aria-disabled={tooMany}
          onClick={() => !tooMany && go({ page: 'compare', breakIds })}
        >
          Compare
        </button>
        <button type="button" className="button" onClick={() => go({ page: 'new-reevaluation' })}>
          Evaluate again
        </button>
      </span>
    </section>
  )
}
