// Held by tests/browser/reevaluationRun.spec.ts.
import { useCallback, useState } from 'react'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { breakSelection } from '../../../parts/lists/selectionStore.ts'
import type { BreaksChoice, BreaksSearch } from './WhichBreaks.tsx'

/** Which breaks are to be evaluated: the one that the person came from, those selected in the list, or all that fit a search. */
export function useChosenBreaks(breakId: number | null) {
  const selected = breakSelection.use()
  const one = useAnswer('breaks.get', breakId === null ? null : { breakId })
  const [choice, setChoice] = useState<BreaksChoice>(
    breakId !== null ? 'one' : selected.length > 0 ? 'selected' : 'search',
  )
  const [search, setSearch] = useState<BreaksSearch>({ text: '', status: 'all' })
  const found = useAnswer('breaks.ids', choice === 'search' ? { ...search, sort: 'startedAt' } : null)
  const onSearch = useCallback((next: BreaksSearch) => setSearch(next), [])
  const ids = { one: breakId === null ? [] : [breakId], selected, search: found.value }
  return {
    choice,
    setChoice,
    search,
    onSearch,
    selected: selected.length,
    found: found.value?.length ?? null,
    /** Names the break that the person came from; null: from none. */
    oneName: one.value?.summary.number ?? null,
    /** The one break alone that is chosen; null: it is not known yet, or others are chosen. */
    record: (choice === 'one' ? one.value : null) as BreakRecord | null,
    /** null: not known yet. */
    breakIds: ids[choice],
    error: one.error ?? found.error,
  }
}
