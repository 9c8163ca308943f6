// Held by tests/browser/longList.spec.ts.
import { useSaidInAddress } from '../routing/useSaidInAddress.ts'
import { addressOfView, viewInAddress } from './listAddress.ts'
import { useKept } from './useKept.ts'
import type { ListView } from './usePagedList.ts'

/**
 * Search, filter and order of a list: still there when the person comes back from a record, and in the address, so that the page
 * can be loaded again. What the address says comes first.
 */
export function useListView(name: string, first: ListView): [ListView, (change: Partial<ListView>) => void] {
  const [view, setView] = useKept(`list ${name}`, first, () => viewInAddress(location.hash))
  const [said, atFirst] = [addressOfView(view), addressOfView(first)]
  useSaidInAddress(said === atFirst ? '' : said)
  return [view, (change) => setView({ ...view, ...change })]
}
