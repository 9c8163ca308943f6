import { placeKeyOf, routeOf } from '../../routes/route.ts'

/** What the gate needs of a window. */
export type GateWindow = {
  location: { hash: string }
  history: { state: unknown; replaceState(state: unknown, unused: string): void; go(by: number): void }
  addEventListener(kind: 'hashchange', call: () => void): void
}

/** The address that is shown, and a question where leaving it would lose something. */
export type RouteGate = {
  shown(): string
  /** Somebody wants to go to another page, and something here is not saved. */
  isAsking(): boolean
  leave(): void
  stay(): void
  /** Calls back after every change until the returned function is called. */
  subscribe(call: () => void): () => void
}

/**
 * Follows the address of the window. Where that leads to another page while something is half written, the address goes back
 * to where it was and the person is asked. A browser tells of a change only afterwards, be it a link, the Back button or a
 * typed address, and not in which direction it went: so each entry of the history carries its position.
 */
export function createRouteGate(window: GateWindow, isUnsaved: () => boolean): RouteGate {
  const calls = new Set<() => void>()
  let shown = window.location.hash
  let position = positionIn(window.history.state) ?? 0
  /** How far in the history the page lies that the person wants to go to. */
  let asked: number | null = null
  let comingBack = false
  let leaving = false
  window.history.replaceState({ position }, '')

  function tell(): void {
    for (const call of calls) call()
  }

  window.addEventListener('hashchange', () => {
    if (comingBack) {
      comingBack = false
      return
    }
    const next = window.location.hash
    const at = positionIn(window.history.state) ?? position + 1
    window.history.replaceState({ position: at }, '')
    const by = at - position
    const isSamePlace = placeKeyOf(routeOf(next)) === placeKeyOf(routeOf(shown))
    if (leaving || isSamePlace || by === 0 || !isUnsaved()) {
      leaving = false
      asked = null
      shown = next
      position = at
    } else {
      comingBack = true
      asked = by
      window.history.go(-by)
    }
    tell()
  })

  return {
    shown: () => shown,
    isAsking: () => asked !== null,
    leave() {
      if (asked === null) return
      leaving = true
      window.history.go(asked)
      asked = null
      tell()
    },
    stay() {
      asked = null
      tell()
    },
    subscribe(call) {
      calls.add(call)
      return () => calls.delete(call)
    },
  }
}

function positionIn(state: unknown): number | null {
  return typeof state === 'object' && state !== null && 'position' in state && typeof state.position === 'number'
    ? state.position
    : null
}
