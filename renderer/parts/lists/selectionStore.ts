import { useStore } from '../../host/hostContext.ts'
import { createStore } from '../../host/store.ts'

/** Breaks picked in the list, in the order in which they were picked; kept while the person looks at other pages. */
const selection = createStore<readonly number[]>([])

/** The breaks that are selected now. */
export function selectedBreaks(): readonly number[] {
  return selection.get()
}

/** Selects these breaks and no others; one that is named twice counts once. */
export function setSelectedBreaks(breakIds: readonly number[]): void {
  selection.set([...new Set(breakIds)])
}

/** The breaks that are selected, and a new rendering whenever that changes. */
export function useSelectedBreaks(): readonly number[] {
  return useStore(selection)
}
