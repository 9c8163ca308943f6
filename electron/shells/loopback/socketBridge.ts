import * as z from 'zod'
import { programFault, Trouble } from '#contract/errors.ts'
import type { Reply } from '#contract/wire/carrier.ts'
import {
  createFrameReader,
  defaultFrameLimits,
  encodeMessage,
  type FrameLimits,
  type Frames,
} from '#contract/wire/messageCoding.ts'
import { socketRequest } from '#contract/wire/socketCarrier.ts'

/** What the bridge needs of a socket; `ws` has all of it. */
export type BridgedSocket = {
  readonly bufferedAmount: number
  readonly open: boolean
  send(frame: string | Uint8Array): void
  close(code: number, reason: string): void
  terminate(): void
}

/** One client's end in the program. */
export type SocketBridge = {
  receiveText(frame: string): void
  receiveBinary(frame: Uint8Array<ArrayBuffer>): void
  sendEvent(name: string, payload: unknown): void
}

/** A page asks little and in small pieces, but for a picture or a table that it brings: `largestPictureBytes`, `largestTableBytes`, with room. */
export const requestLimits: FrameLimits = { textCharacters: 4_000_000, binaryBytes: 32_000_000 }

/** A client that has so much unread does not need another live frame: it draws the newest when it has caught up. */
const dropLiveAboveBytes = 1_000_000
/** A client that has so much unread has stopped reading; it may come back and ask again. */
const hangUpAboveBytes = 600_000_000
const dropped: ReadonlySet<string> = new Set(['live.frame'])

/**
 * Joins one socket to the dispatcher. Whatever the other side sends, the worst that happens is that its socket is closed.
 * Live frames are left out for a client that does not keep up, all else is sent in order.
 */
export function bridgeSocket(
  socket: BridgedSocket,
  dispatch: (name: unknown, input: unknown) => Promise<Reply>,
): SocketBridge {
  function send(frames: Frames) {
    if (!socket.open) return
    if (socket.bufferedAmount > hangUpAboveBytes) return socket.terminate()
    socket.send(frames.text)
    if (frames.binary !== null) socket.send(frames.binary)
  }

  const reader = createFrameReader((message) => void answer(socketRequest.parse(message)), requestLimits)

  async function answer(request: z.infer<typeof socketRequest>) {
    try {
      send(encodeReply(request.id, await dispatch(request.name, request.input)))
    } catch {
      socket.terminate()
    }
  }

  function receive(read: () => void) {
    try {
      read()
    } catch (thrown) {
      // Whatever was thrown was thrown over bytes from outside: it ends their socket, never the program.
      const known = thrown instanceof Trouble || thrown instanceof z.ZodError
      socket.close(known ? 1008 : 1011, known ? 'The frame breaks the format.' : 'The frame could not be read.')
    }
  }

  return {
    receiveText: (frame) => receive(() => reader.text(frame)),
    receiveBinary: (frame) => receive(() => reader.binary(frame)),
    sendEvent(name, payload) {
      if (dropped.has(name) && socket.bufferedAmount > dropLiveAboveBytes) return
      send(encodeMessage({ event: name, payload }))
    },
  }
}

/** A reply that cannot be sent becomes one that says so; over one that is too large for it, a page would hang up. */
function encodeReply(id: number, reply: Reply): Frames {
  try {
    const frames = encodeMessage({ id, reply })
    return isTooLarge(frames) ? encodeMessage({ id, reply: answerTooLarge }) : frames
  } catch (thrown) {
    // A text beyond what the language holds
    if (thrown instanceof RangeError) return encodeMessage({ id, reply: answerTooLarge })
    const message = thrown instanceof Error ? thrown.message : String(thrown)
    return encodeMessage({
      id,
      reply: { ok: false, error: { code: 'internal', message, hint: programFault } } satisfies Reply,
    })
  }
}

function isTooLarge({ text, binary }: Frames): boolean {
  const { textCharacters, binaryBytes } = defaultFrameLimits
  return text.length > textCharacters || (binary?.byteLength ?? 0) > binaryBytes
}

const answerTooLarge: Reply = {
  ok: false,
  error: {
    code: 'unsupported',
    message: 'The answer is larger than a page can take.',
    hint: 'Ask for less at once, or use a command.',
  },
}
