import { randomBytes } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import type { Duplex } from 'node:stream'
import { type WebSocket, WebSocketServer } from 'ws'
import { Trouble } from '#contract/errors.ts'
import { type EventName, events } from '#contract/events.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import type { Engine } from '#engine/core/engine.ts'
import { pageFile } from '../page/pageFile.ts'
import { pageHeaders } from '../page/pageHeaders.ts'
import { type AccessRequest, type AccessSecrets, cookieName, judgePage, judgeUpgrade } from './accessGuard.ts'
import { bridgeSocket, requestLimits, type SocketBridge } from './socketBridge.ts'

export type LoopbackOptions = {
  engine: Pick<Engine, 'handlers' | 'subscribe'>
  /** The built page. */
  pageFolder: string
  /** 0: any that is free. */
  port: number
}

export type Loopback = {
  /** Opens the page once, in one browser. */
  url: string
  port: number
  /** Hangs up on every page and stops listening. The engine is left as it is. */
  close(): Promise<void>
}

const cookieAgeS = 30 * 24 * 3600
const pingEveryMs = 20_000

/** Serves the page and the contract on 127.0.0.1, to whoever holds the address that it returns. Rejects with a Trouble when the port is taken. */
export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const secrets: AccessSecrets = { port: 0, ticket: secret(), session: secret() }
  const dispatch = createDispatcher(options.engine.handlers)
  const bridges = new Map<WebSocket, SocketBridge>()
  const answersPing = new WeakSet<WebSocket>()
  const server = createServer((request, response) => void servePage(request, response))
  const sockets = new WebSocketServer({
    noServer: true,
    perMessageDeflate: false,
    maxPayload: Math.max(requestLimits.binaryBytes, requestLimits.textCharacters),
  })

  async function servePage(request: IncomingMessage, response: ServerResponse) {
    const headers = pageHeaders([`ws://127.0.0.1:${secrets.port}`])
    const answer = (status: number, more: Record<string, string>, body: string | Uint8Array) => {
      response.writeHead(status, { ...headers, ...more })
      response.end(request.method === 'HEAD' ? undefined : body)
    }
    const text = { 'Content-Type': 'text/plain; charset=utf-8' }
    const access = accessOf(request)
    const decision = judgePage(access, secrets)
    if (decision.kind === 'refuse') return answer(decision.status, text, `${decision.because}\n`)
    if (decision.kind === 'exchange') {
      const cookie = `${cookieName(secrets.port)}=${secrets.session}; HttpOnly; SameSite=Strict; Path=/; Max-Age=${cookieAgeS}`
      return answer(303, { ...text, Location: '/', 'Set-Cookie': cookie }, 'Go on to /\n')
    }
    // The browser has come back with its cookie, so the ticket has done its work. Not before: a preview that only looked has not used it up.
    secrets.ticket = null
    const file = pageFile(decision.path)
    if (file === null) return answer(404, text, 'There is nothing here.\n')
    try {
      const content = await readFile(join(options.pageFolder, ...file.segments))
      answer(200, { 'Content-Type': file.contentType }, content)
    } catch {
      const unbuilt = decision.path === '/' ? ' The page is not built: run "npm run build".' : ''
      answer(404, text, `There is nothing here.${unbuilt}\n`)
    }
  }

  server.on('upgrade', (request: IncomingMessage, stream: Duplex, head: Buffer) => {
    stream.on('error', () => stream.destroy())
    const decision = judgeUpgrade(accessOf(request), secrets)
    if (decision.kind === 'refuse') {
      const length = Buffer.byteLength(decision.because)
      stream.end(
        `HTTP/1.1 ${decision.status} Refused\r\nConnection: close\r\nContent-Type: text/plain\r\nContent-Length: ${length}\r\n\r\n${decision.because}`,
      )
      return
    }
    sockets.handleUpgrade(request, stream, head, welcome)
  })

  function welcome(socket: WebSocket) {
    const bridge = bridgeSocket(
      {
        get bufferedAmount() {
          return socket.bufferedAmount
        },
        get open() {
          return socket.readyState === socket.OPEN
        },
        send: (frame) => socket.send(frame, () => {}),
        close: (code, reason) => socket.close(code, reason),
        terminate: () => socket.terminate(),
      },
      dispatch,
    )
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

  secrets.port = await listen(server, options.port)
  const unsubscribe = (Object.keys(events) as EventName[]).map((name) =>
    options.engine.subscribe(name, (payload) => {
      for (const bridge of bridges.values()) bridge.sendEvent(name, payload)
    }),
  )
  const pings = setInterval(() => {
    for (const socket of bridges.keys()) {
      if (!answersPing.delete(socket)) socket.terminate()
      else socket.ping()
    }
  }, pingEveryMs)
  pings.unref()

  async function close() {
    clearInterval(pings)
    for (const end of unsubscribe) end()
    for (const socket of bridges.keys()) socket.terminate()
    sockets.close()
    server.closeAllConnections()
    await new Promise((resolve) => server.close(resolve))
  }

  return { url: `http://127.0.0.1:${secrets.port}/?token=${secrets.ticket}`, port: secrets.port, close }
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => reject(troubleOfPort(error, port)))
    server.listen({ host: '127.0.0.1', port, exclusive: true }, () => resolve((server.address() as AddressInfo).port))
  })
}

function troubleOfPort(error: NodeJS.ErrnoException, port: number): Error {
  if (error.code === 'EADDRINUSE')
    return new Trouble(
      'conflict',
      `Port ${port} of this computer is in use by another program.`,
      'Choose another one with --http-port, or 0 for any that is free.',
    )
  if (error.code === 'EACCES')
    return new Trouble('denied', `Port ${port} may not be used.`, 'Choose one above 1023 with --http-port.')
  return error
}

const secret = () => randomBytes(32).toString('base64url')

const accessOf = ({ method, url, headers }: IncomingMessage): AccessRequest => ({
  method,
  target: url,
  host: headers.host,
  origin: headers.origin,
  cookie: headers.cookie,
})
