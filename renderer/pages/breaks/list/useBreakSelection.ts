// Held by tests/browser/breaks/selectBreaks.spec.ts.
import { useCallback } from 'react'
import type { BreakRow } from '#contract/breaks/break.ts'
import { useHost } from '../../../host/hostContext.ts'
import { breakSelection } from '../../../parts/lists/selectionStore.ts'
import type { ListView, PagedList } from '../../../parts/lists/usePagedList.ts'
import { type PickedRows, useRowSelection } from '../../../parts/lists/useRowSelection.ts'

export type BreakSelection = PickedRows<BreakRow>

const idOf = ({ breakId }: BreakRow) => breakId

/** Breaks picked in the list. */
export function useBreakSelection(view: ListView, list: PagedList<'breaks.list'>): BreakSelection {
  const { client } = useHost()
  const askIds = useCallback(() => client.call('breaks.ids', view), [client, view])
  return useRowSelection({
    ...{ selection: breakSelection, rowAt: list.rowAt, idOf, askIds },
    boxLabel: (row) => `Select break ${row.breakId}`,
  })
}
