// Held by tests/browser/formsRun.spec.ts.
import { useSyncExternalStore } from 'react'
import { hashOf, type Route, routeOf } from '../../routes/route.ts'
import { isAnythingUnsaved } from '../../widgets/forms/unsaved.ts'
import { createRouteGate, type RouteGate } from './routeGate.ts'

let made: RouteGate | null = null

/** One for the page, made when the first place is shown. */
function gate(): RouteGate {
  made ??= createRouteGate(window, () => isAnythingUnsaved('page'))
  return made
}

/** Where the program is now. */
export function useRoute(): Route {
  return routeOf(useSyncExternalStore(gate().subscribe, gate().shown))
}

/** Goes to a place, as a link would. */
export function go(route: Route): void {
  location.hash = hashOf(route)
}

/** Whether the person has to be asked before the page is left, and both answers. */
export function useLeaving(): { asking: boolean; leave(): void; stay(): void } {
  const asking = useSyncExternalStore(gate().subscribe, gate().isAsking)
  return { asking, leave: gate().leave, stay: gate().stay }
}
