import { useState } from 'react'
import type { ListView } from './usePagedList.ts'

const remembered = new Map<string, ListView>()

/** Search, filter and order of a list, still there when the person comes back from a record. */
export function useListView(name: string, first: ListView): [ListView, (change: Partial<ListView>) => void] {
  const [view, setView] = useState<ListView>(() => remembered.get(name) ?? first)
  return [
    view,
    (change) => {
      const next = { ...view, ...change }
      remembered.set(name, next)
      setView(next)
    },
  ]
}
