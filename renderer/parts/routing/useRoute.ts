import { useSyncExternalStore } from 'react'
import { hashOf, type Route, routeOf } from '../../routes/route.ts'

function subscribe(call: () => void): () => void {
  addEventListener('hashchange', call)
  return () => removeEventListener('hashchange', call)
}

/** Where the program is now. */
export function useRoute(): Route {
  return routeOf(useSyncExternalStore(subscribe, () => location.hash))
}

/** Goes to a place, as a link would. */
export function go(route: Route): void {
  location.hash = hashOf(route)
}
