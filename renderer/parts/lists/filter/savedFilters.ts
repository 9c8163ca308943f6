import type { SavedFilter } from '#contract/settings/lists.ts'
import { folded } from '#domain/text/naturalOrder.ts'
import { addressOfView } from '../listAddress.ts'
import type { ListView } from '../usePagedList.ts'

/** Says which rows are shown, in whatever order. */
const rowsOf = ({ text = '', status = 'all', filter = {} }: ListView) => addressOfView({ text, status, filter })

/** Whether a list that is looked at so shows what was kept. */
export function isSameFilter(saved: SavedFilter, view: ListView): boolean {
  return rowsOf(saved) === rowsOf(view)
}

/** One more kept filter, in the order of the names; one of that name in the same list makes room for it. */
export function withFilterNamed(all: readonly SavedFilter[], next: SavedFilter): SavedFilter[] {
  const others = all.filter(({ list, name }) => list !== next.list || folded(name) !== folded(next.name))
  return [...others, next].sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }))
}

/** All but one. */
export function withoutFilter(all: readonly SavedFilter[], gone: SavedFilter): SavedFilter[] {
  return all.filter(({ list, name }) => list !== gone.list || name !== gone.name)
}
