// Held by tests/browser/breaks/selectBreaks.spec.ts.
import { useCallback, useMemo, useState } from 'react'
import type { BreakSummary } from '#contract/breaks/break.ts'
import { type TroubleMessage, troubleFrom } from '#contract/errors.ts'
import { useHost } from '../../../host/hostContext.ts'
import { selectedBreaks, setSelectedBreaks, useSelectedBreaks } from '../../../parts/lists/selectionStore.ts'
import type { ListView, PagedList } from '../../../parts/lists/usePagedList.ts'
import type { RowSelection } from '../../../widgets/tables/RowSelection.tsx'

export type BreakSelection = {
  rows: RowSelection<BreakSummary>
  breakIds: readonly number[]
  error: TroubleMessage | null
}

/** Breaks picked in the list. What is not in sight is asked for by number alone, so that ten thousand rows are no trouble. */
export function useBreakSelection(view: ListView, list: PagedList<'breaks.list'>): BreakSelection {
  const { client } = useHost()
  const breakIds = useSelectedBreaks()
  const picked = useMemo(() => new Set(breakIds), [breakIds])
  const [error, setError] = useState<TroubleMessage | null>(null)

  /** Adds what lies between two places of the list; all of it without them. */
  const add = useCallback(
    async (from: number, to: number) => {
      try {
        setError(null)
        const there = idsInSight(list, from, to)
        const ids = there ?? (await client.call('breaks.ids', view)).slice(from, to + 1)
        setSelectedBreaks([...selectedBreaks(), ...ids])
      } catch (thrown) {
        setError(troubleFrom(thrown))
      }
    },
    [client, view, list],
  )

  return {
    breakIds,
    error,
    rows: {
      picked: breakIds.length,
      isPicked: (row) => picked.has(row.breakId),
      onToggle: ({ breakId }) =>
        setSelectedBreaks(picked.has(breakId) ? breakIds.filter((id) => id !== breakId) : [...breakIds, breakId]),
      onExtend: (from, to) => void add(Math.min(from, to), Math.max(from, to)),
      onAll: () => void add(0, Number.MAX_SAFE_INTEGER - 1),
      onNone: () => setSelectedBreaks([]),
      boxLabel: (row) => `Select break ${row.breakId}`,
    },
  }
}

/** The numbers of the rows from one place to another, if all of them are here; null if some are not, or there are many. */
function idsInSight(list: PagedList<'breaks.list'>, from: number, to: number): number[] | null {
  if (to - from > 500) return null
  const ids: number[] = []
  for (let index = from; index <= to; index++) {
    const row = list.rowAt(index)
    if (row === undefined) return null
    ids.push(row.breakId)
  }
  return ids
}
