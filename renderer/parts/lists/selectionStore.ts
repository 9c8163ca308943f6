import { useStore } from '../../host/hostContext.ts'
import { createStore } from '../../host/store.ts'

/** Records picked in a list, in the order in which they were picked; kept while the person looks at other pages. */
export type Selection = {
  read(): readonly number[]
  /** Selects these and no others; one that is named twice counts once. */
  set(ids: readonly number[]): void
  /** Those that are selected, and a new rendering whenever that changes. */
  use(): readonly number[]
}

function createSelection(): Selection {
  const selection = createStore<readonly number[]>([])
  return {
    read: () => selection.get(),
    set: (ids) => selection.set([...new Set(ids)]),
    use: () => useStore(selection),
  }
}

/** The specimens that are selected. */
export const specimenSelection: Selection = createSelection()
/** The breaks that are selected. */
export const breakSelection: Selection = createSelection()
