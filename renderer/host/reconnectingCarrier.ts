import { Trouble, type TroubleMessage } from '#contract/errors.ts'
import type { Carrier } from '#contract/wire/carrier.ts'
import { reconnectsByItself } from '#contract/wire/carrier.ts'
import { createSocketCarrier, type SocketCarrier } from '#contract/wire/socketCarrier.ts'
import type { HostLink, LinkWatch } from './hostConnection.ts'

/** As much of a WebSocket as is used here; a test hands in one without a network. */
export type SocketLike = Pick<WebSocket, 'send' | 'close'> & {
  binaryType: BinaryType
  onopen: ((event: never) => void) | null
  onclose: ((event: never) => void) | null
  onmessage: ((event: MessageEvent) => void) | null
}

export type ReconnectParts = {
  open(): SocketLike
  /** Calls back once after so many seconds. */
  after(seconds: number, call: () => void): void
  /** Asked when a socket closes that never opened: why the other side does not want it, or null. */
  refusal?(): Promise<TroubleMessage | null>
}

/** Seconds to wait before the attempts to connect again; the last is used from then on. */
const pausesS = [0.25, 0.5, 1, 2, 3] as const

const largeBytes = 1_000_000

/**
 * One carrier over as many sockets as it takes: when one closes, waiting calls fail, and another is opened after a pause.
 * Listeners stay subscribed across sockets.
 */
export function createReconnectingCarrier(parts: ReconnectParts): {
  carrier: Carrier
  watchLink: LinkWatch
} {
  const listeners = new Set<(name: string, payload: unknown) => void>()
  const watchers = new Set<Parameters<LinkWatch>[0]>()
  let current: SocketCarrier | null = null
  let link: HostLink = 'connecting'
  let attempts = 0

  function tell(next: HostLink, because?: TroubleMessage): void {
    link = next
    for (const watcher of watchers) watcher(next, because)
  }

  /** Whoever is refused stays so until the page is opened anew; whoever is lost tries again. */
  function away(because: TroubleMessage | null): void {
    if (because !== null) {
      tell('refused', because)
      return
    }
    tell('lost')
    const pause = pausesS[Math.min(attempts++, pausesS.length - 1)] as number
    parts.after(pause, connect)
  }

  function connect(): void {
    const socket = parts.open()
    socket.binaryType = 'arraybuffer'
    const carrier = createSocketCarrier({
      send({ text, binary }) {
        socket.send(text)
        // What is large goes as a blob, which the browser reads beside the page; bytes would be written out before `send` returns.
        if (binary !== null) socket.send(binary.byteLength > largeBytes ? new Blob([binary]) : binary)
      },
      close: () => socket.close(),
    })
    carrier.subscribe((name, payload) => {
      for (const listener of listeners) listener(name, payload)
    })
    socket.onopen = () => {
      attempts = 0
      current = carrier
      tell('connected')
    }
    socket.onmessage = ({ data }) => {
      if (typeof data === 'string') carrier.receiveText(data)
      else if (data instanceof ArrayBuffer) carrier.receiveBinary(new Uint8Array(data))
    }
    socket.onclose = () => {
      const wasOpen = current === carrier
      carrier.closed()
      current = null
      if (wasOpen || parts.refusal === undefined) away(null)
      else void parts.refusal().then(away)
    }
  }

  connect()
  return {
    carrier: {
      call: (name, input) =>
        current === null
          ? Promise.reject(
              new Trouble('not-connected', 'The page is not connected to the program.', reconnectsByItself),
            )
          : current.call(name, input),
      subscribe(listener) {
        listeners.add(listener)
        return () => listeners.delete(listener)
      },
    },
    watchLink(change) {
      watchers.add(change)
      change(link)
    },
  }
}
