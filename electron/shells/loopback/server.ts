import { randomBytes } from 'node:crypto'
import { createServer, type IncomingMessage, type RequestListener, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { Trouble } from '#contract/errors.ts'
import { type EventName, events } from '#contract/events.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import type { Engine } from '#engine/core/engine.ts'
import type { AccessSecrets } from './accessGuard.ts'
import { answerPage } from './answerPage.ts'
import { createOpenSockets } from './openSockets.ts'
import { refuseStream } from './refuseStream.ts'

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
  /** Settles when the address has been opened, and so is worth nothing any more. */
  opened: Promise<void>
  /** Hangs up on every page and stops listening. The engine is left as it is. */
  close(): Promise<void>
}

const pingEveryMs = 20_000

/** Serves the page and the contract on 127.0.0.1, to whoever holds the address that it returns. Rejects with a Trouble when the port is taken. */
export async function startLoopback(options: LoopbackOptions): Promise<Loopback> {
  const secrets: AccessSecrets = { port: 0, ticket: secret(), ticketUsed: false, session: secret(), tab: secret() }
  const sockets = createOpenSockets(createDispatcher(options.engine.handlers), secrets)
  const { promise: opened, resolve: tellOpened } = Promise.withResolvers<void>()
  const server = createGuardedServer(async (request, response) => {
    await answerPage(request, response, options.pageFolder, secrets)
    if (secrets.ticketUsed) tellOpened()
  })
  server.on('upgrade', sockets.upgrade)
  secrets.port = await listen(server, options.port)
  const unsubscribe = (Object.keys(events) as EventName[]).map((name) =>
    options.engine.subscribe(name, (payload) => sockets.sendEvent(name, payload)),
  )
  const pings = setInterval(sockets.ping, pingEveryMs)
  pings.unref()

  async function close() {
    clearInterval(pings)
    for (const end of unsubscribe) end()
    sockets.close()
    server.closeAllConnections()
    await new Promise((resolve) => server.close(resolve))
  }

  return { opened, url: `http://127.0.0.1:${secrets.port}/?token=${secrets.ticket}`, port: secrets.port, close }
}

/** A server whose every answer is ours, with our headers, and whose requests cannot end the program, whatever they throw. */
function createGuardedServer(answer: (request: IncomingMessage, response: ServerResponse) => Promise<void>): Server {
  const answered: RequestListener = (request, response) =>
    void answer(request, response).catch(() => response.destroy())
  // The guard refuses a missing Host itself; Node's own refusal would go out without our headers.
  const server = createServer({ requireHostHeader: false }, answered)
  server.on('checkContinue', answered)
  server.on('checkExpectation', answered)
  server.on('clientError', (_error, stream) => refuseStream(stream, 400, 'The request cannot be read.'))
  return server
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
