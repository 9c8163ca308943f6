// Held by tests/browser/bothHosts.spec.ts.
import { createContext, useContext, useSyncExternalStore } from 'react'
import type { BenchState } from '#contract/bench/bench.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import type { Host } from './hostConnection.ts'
import type { Store } from './store.ts'

export const HostContext = createContext<Host | null>(null)

/** The host of the page. */
export function useHost(): Host {
  const host = useContext(HostContext)
  if (host === null) throw new TypeError('useHost requires a HostContext above it')
  return host
}

/** The value of a store, and a new rendering whenever it changes. */
export function useStore<T>(store: Store<T>): T {
  return useSyncExternalStore(store.subscribe, store.get)
}

/** The state of the bench. Only below a frame that waits for it. */
export function useBench(): BenchState {
  const bench = useStore(useHost().bench)
  if (bench === null) throw new TypeError('useBench requires a connected host')
  return bench
}

/** What the program remembers for its user. Only below a frame that waits for it. */
export function usePreferences(): Preferences {
  const preferences = useStore(useHost().preferences)
  if (preferences === null) throw new TypeError('usePreferences requires a connected host')
  return preferences
}
