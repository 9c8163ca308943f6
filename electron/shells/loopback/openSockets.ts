// Held by tests/shells/loopback/server.spec.ts.
import type { IncomingMessage } from 'node:http'
import type { Duplex } from 'node:stream'
import { type WebSocket, WebSocketServer } from 'ws'
import type { EventName, PayloadOf } from '#contract/events.ts'
import type { createDispatcher } from '#contract/wire/dispatcher.ts'
import { type AccessSecrets, accessOf, judgeUpgrade, socketProtocol } from './accessGuard.ts'
import { refuseStream } from './refuseStream.ts'
import { bridgeSocket, requestLimits, type SocketBridge } from './socketBridge.ts'

/** The connections of the pages that are open. */
export type OpenSockets = {
  /** Lets a page in, or refuses it. */
  upgrade(request: IncomingMessage, stream: Duplex, head: Buffer): void
  sendEvent<N extends EventName>(name: N, payload: PayloadOf<N>): void
  /** Hangs up on whoever has not answered since the last call. */
  ping(): void
  close(): void
}

/** Nobody is connected yet. */
export function createOpenSockets(dispatch: ReturnType<typeof createDispatcher>, secrets: AccessSecrets): OpenSockets {
  const bridges = new Map<WebSocket, SocketBridge>()
  const answersPing = new WeakSet<WebSocket>()
  const sockets = new WebSocketServer({
    noServer: true,
    perMessageDeflate: false,
    // The tab's secret, named behind it, is not said back.
    handleProtocols: () => socketProtocol,
    maxPayload: Math.max(requestLimits.binaryBytes, requestLimits.textCharacters),
  })

  function welcome(socket: WebSocket): void {
    const bridge = bridgeSocket(frameSink(socket), dispatch)
    bridges.set(socket, bridge)
    answersPing.add(socket)
    socket.on('message', (data, isBinary) => {
      const bytes = data as Buffer<ArrayBuffer>
      if (isBinary) bridge.receiveBinary(bytes)
      else bridge.receiveText(bytes.toString('utf8'))
    })
    socket.on('pong', () => answersPing.add(socket))
    // A frame that ws itself refuses (too long, no UTF-8) is followed by its close.
    socket.on('error', () => {})
    socket.on('close', () => bridges.delete(socket))
  }

  return {
    upgrade(request, stream, head) {
      stream.on('error', () => stream.destroy())
      try {
        const decision = judgeUpgrade(accessOf(request), secrets)
        if (decision.kind === 'refuse') refuseStream(stream, decision.status, decision.because)
        else sockets.handleUpgrade(request, stream, head, welcome)
      } catch {
        stream.destroy()
      }
    },
    sendEvent(name, payload) {
      for (const bridge of bridges.values()) bridge.sendEvent(name, payload)
    },
    ping() {
      for (const socket of bridges.keys()) {
        if (!answersPing.delete(socket)) socket.terminate()
        else socket.ping()
      }
    },
    close() {
      for (const socket of bridges.keys()) socket.terminate()
      sockets.close()
    },
  }
}

/** What the bridge sees of a socket. */
function frameSink(socket: WebSocket): Parameters<typeof bridgeSocket>[0] {
  return {
    get bufferedAmount() {
      return socket.bufferedAmount
    },
    get open() {
      return socket.readyState === socket.OPEN
    },
    send: (frame) => socket.send(frame, () => {}),
    close: (code, reason) => socket.close(code, reason),
    terminate: () => socket.terminate(),
  }
}
