import { troubleFrom } from '#contract/errors.ts'
import type { Emit, EventName, PayloadOf } from '#contract/events.ts'
import type { Engine } from './engine.ts'

/**
 * Brings the engine's events to whoever asked for them. A listener that throws keeps no other from hearing: its fault is
 * told as a trouble (unless it was a trouble that it could not bear).
 */
export function createEventHub(): { emit: Emit; subscribe: Engine['subscribe'] } {
  const listeners = new Map<EventName, Set<(payload: never) => void>>()

  const emit: Emit = (name, payload) => {
    for (const listener of [...(listeners.get(name) ?? [])])
      try {
        ;(listener as (payload: PayloadOf<typeof name>) => void)(payload)
      } catch (thrown) {
        if (name !== 'trouble') emit('trouble', troubleFrom(thrown))
      }
  }

  return {
    emit,
    subscribe(name, listener) {
      const ofName = listeners.get(name) ?? new Set()
      listeners.set(name, ofName)
      // A function of its own, so that one listener may subscribe twice and end once.
      const heard = (payload: PayloadOf<typeof name>) => listener(payload)
      ofName.add(heard)
      return () => ofName.delete(heard)
    },
  }
}
