import { useCallback, useState } from 'react'
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import { useAnswer } from '../../../host/useAnswer.ts'
import { useSelectedBreaks } from '../../../parts/lists/selectionStore.ts'
import type { BreaksChoice, BreaksSearch } from './WhichBreaks.tsx'

/** Which breaks are to be evaluated again: one, those that were ticked in the list, or those that a search finds. */
export type ChosenBreaks = {
  choice: BreaksChoice
  setChoice(choice: BreaksChoice): void
  search: BreaksSearch
  setSearch(search: BreaksSearch): void
  /** How many were ticked. */
  selected: number
  /** null: not known yet. */
  found: number | null
  breakIds: readonly number[] | null
  /** The name of the one that the person came from; null: none. */
  oneName: string | null
  /** The record of the one, where only that is chosen. */
  record: BreakRecord | null
  error: TroubleMessage | null
}

/** Begins with the one that the person came from, else with what is ticked, else with all that a search finds. */
export function useChosenBreaks(breakId: number | null): ChosenBreaks {
  const selected = useSelectedBreaks()
  const one = useAnswer('breaks.get', breakId === null ? null : { breakId })
  const [choice, setChoice] = useState<BreaksChoice>(
    breakId !== null ? 'one' : selected.length > 0 ? 'selected' : 'search',
  )
  const [search, setSearched] = useState<BreaksSearch>({ text: '', status: 'all' })
  const setSearch = useCallback((next: BreaksSearch) => setSearched(next), [])
  const found = useAnswer('breaks.ids', choice === 'search' ? { ...search, sort: 'startedAt' } : null)
  const only = breakId === null ? [] : [breakId]
  return {
    ...{ choice, setChoice, search, setSearch },
    selected: selected.length,
    found: found.value?.length ?? null,
    breakIds: choice === 'one' ? only : choice === 'selected' ? selected : found.value,
    oneName: breakId === null ? null : (one.value?.summary.number ?? null),
    record: choice === 'one' ? one.value : null,
    error: one.error ?? found.error,
  }
}
