import * as z from 'zod'
import { Trouble, troubleFrom } from '../errors.ts'
import type { Carrier, Reply } from './carrier.ts'
import { reconnectsByItself } from './carrier.ts'
import { createFrameReader, defaultFrameLimits, encodeMessage, type Frames } from './messageCoding.ts'

/** What the page sends over a WebSocket. */
export const socketRequest = z.strictObject({ id: z.int().nonnegative(), name: z.string(), input: z.unknown() })

/** What the program sends over a WebSocket: the reply to a request, or an event. */
export const socketAnswer = z.union([
  z.strictObject({ id: z.int().nonnegative(), reply: z.unknown() }),
  z.strictObject({ event: z.string(), payload: z.unknown() }),
])

/** A carrier over a socket that its owner opened, and the three things the owner tells it. */
export type SocketCarrier = Carrier & {
  receiveText(frame: string): void
  receiveBinary(frame: Uint8Array<ArrayBuffer>): void
  /** The socket is gone: every call that waits is rejected, later ones at once. */
  closed(): void
}

/**
 * The page's end of a WebSocket, without the socket: `send` writes frames in order, `close` ends a connection that broke
 * the format.
 */
export function createSocketCarrier(socket: { send(frames: Frames): void; close(): void }): SocketCarrier {
  const waiting = new Map<number, { resolve(reply: unknown): void; reject(error: Error): void }>()
  const listeners = new Set<(name: string, payload: unknown) => void>()
  let nextId = 0
  let open = true

  const reader = createFrameReader((message) => {
    const answer = socketAnswer.parse(message)
    if ('event' in answer) for (const listener of listeners) listener(answer.event, answer.payload)
    else {
      waiting.get(answer.id)?.resolve(answer.reply)
      waiting.delete(answer.id)
    }
  }, defaultFrameLimits)

  function closed() {
    open = false
    for (const { reject } of waiting.values()) reject(connectionLost())
    waiting.clear()
  }

  function receive(read: () => void) {
    if (!open) return
    try {
      read()
    } catch (thrown) {
      // A fault in a listener is the page's own and no reason to hang up.
      if (!(thrown instanceof z.ZodError) && !(thrown instanceof Trouble)) throw thrown
      closed()
      socket.close()
    }
  }

  return {
    call(name, input) {
      if (!open) return Promise.reject(connectionLost())
      const id = nextId++
      let frames: Frames
      try {
        frames = encodeMessage({ id, name, input })
      } catch (thrown) {
        // What cannot be sent is answered here as the dispatcher would answer it there.
        return Promise.resolve({ ok: false, error: troubleFrom(thrown) } satisfies Reply)
      }
      return new Promise((resolve, reject) => {
        waiting.set(id, { resolve, reject })
        socket.send(frames)
      })
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    receiveText: (frame) => receive(() => reader.text(frame)),
    receiveBinary: (frame) => receive(() => reader.binary(frame)),
    closed,
  }
}

const connectionLost = () => new Trouble('not-connected', 'The connection to the program was lost.', reconnectsByItself)
