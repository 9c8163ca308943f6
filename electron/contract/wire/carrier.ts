// Held by tests/contract/conformance.spec.ts.
import * as z from 'zod'
import { Trouble, troubleMessage } from '../errors.ts'
import { type EventName, events, type PayloadOf } from '../events.ts'
import { type InputOf, type OutputOf, type ProcedureName, procedures } from '../procedures.ts'

/** What every reply is, on any carrier. */
export const reply = z.discriminatedUnion('ok', [
  z.strictObject({ ok: z.literal(true), value: z.unknown() }),
  z.strictObject({ ok: z.literal(false), error: troubleMessage }),
])
export type Reply = z.infer<typeof reply>

/** All that a host must supply. Values keep typed arrays as typed arrays. */
export type Carrier = {
  /** Resolves with a Reply; rejects only when the carrier itself is broken. */
  call(name: string, input: unknown): Promise<unknown>
  /** Hears every event; the returned function ends it. */
  subscribe(listener: (name: string, payload: unknown) => void): () => void
}

/** The contract as the page sees it: typed, parsed on arrival, failing with a Trouble. */
export type Client = {
  call<N extends ProcedureName>(name: N, input: InputOf<N>): Promise<OutputOf<N>>
  on<N extends EventName>(name: N, listener: (payload: PayloadOf<N>) => void): () => void
}

/** A typed client over any carrier. Replies and events are parsed; an event that does not parse is reported by `onBadEvent`. */
export function createClient(carrier: Carrier, onBadEvent: (name: string, error: z.ZodError) => void): Client {
  const listeners = new Map<string, Set<(payload: never) => void>>()
  carrier.subscribe((name, payload) => {
    const interested = listeners.get(name)
    if (interested === undefined || interested.size === 0) return
    const parsed = events[name as EventName].safeParse(payload)
    if (!parsed.success) return onBadEvent(name, parsed.error)
    for (const listener of interested) listener(parsed.data as never)
  })
  return {
    async call(name, input) {
      const answer = reply.parse(await carrier.call(name, input))
      if (!answer.ok) throw new Trouble(answer.error.code, answer.error.message, answer.error.hint)
      return procedures[name].output.parse(answer.value) as never
    },
    on(name, listener) {
      const interested = listeners.get(name) ?? new Set()
      listeners.set(name, interested)
      interested.add(listener)
      return () => interested.delete(listener)
    },
  }
}

/** What to do while the page and the program do not hear each other. */
export const reconnectsByItself = 'See whether Breakledger still runs; the page connects again by itself.'
