import { useKept } from './useKept.ts'
import type { ListView } from './usePagedList.ts'

/** Search, filter and order of a list, still there when the person comes back from a record. */
export function useListView(name: string, first: ListView): [ListView, (change: Partial<ListView>) => void] {
  const [view, setView] = useKept(`list ${name}`, first)
  return [view, (change) => setView({ ...view, ...change })]
}
