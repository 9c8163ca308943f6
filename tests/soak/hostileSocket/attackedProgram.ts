import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { WebSocket } from 'ws'
import { type Client, createClient } from '#contract/wire/carrier.ts'
import { createReconnectingCarrier } from '#renderer/host/reconnectingCarrier.ts'
import { buildIfNeeded } from '#shells/start/build.ts'
import { exchangeTicket } from '#tests/contract/carriers.ts'
import { startCommand } from '#tests/fakes/commandProcess.ts'

/** The program in a process of its own, and ways in for whoever holds its ticket. */
export type AttackedProgram = {
  client: Client
  carrier: ReturnType<typeof createReconnectingCarrier>['carrier']
  /** A socket that is open. */
  socket(): Promise<WebSocket>
  /** null while the process lives, else how it ended. */
  ended(): string | null
  close(): Promise<void>
}

/** Starts `serve` on a demo archive of its own, as the command line does, and waits until it answers. */
export async function startAttackedProgram(): Promise<AttackedProgram> {
  await buildIfNeeded('page')
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-hostile-'))
  // A random call may change to the archive that would be the user's own: it must not outlive this program either.
  const serve = startCommand(['serve', '--no-open', '--demo', '--archive', join(folder, 'demo.breakledger')], {
    XDG_DATA_HOME: folder,
  })
  let end: string | null = null
  void serve.ended.then((how) => {
    end = `${how} ${serve.errors().slice(-2000)}`
  })
  const url = String((await serve.until(() => true)).url)
  const { origin, host } = new URL(url)
  const { cookie, tab } = await exchangeTicket(url)
  function open(): WebSocket {
    const socket = new WebSocket(`ws://${host}/socket`, ['breakledger', tab], { origin, headers: { cookie } })
    // What goes wrong is seen by its close.
    socket.on('error', () => {})
    return socket
  }
  let closed = false
  const { carrier, watchLink } = createReconnectingCarrier({
    open: () => open() as never,
    after: (seconds, call) => void (closed || setTimeout(call, seconds * 1000)),
  })
  await new Promise<void>((resolve) => watchLink((link) => link === 'connected' && resolve()))
  const client = createClient(carrier, (name, error) => {
    throw new Error(`event ${name} cannot be read: ${error.message}`)
  })
  // The demo connects its device when its study is there.
  while ((await client.call('bench.state', {})).connection.status !== 'open') await pause(100)
  return {
    client,
    carrier,
    ended: () => end,
    socket() {
      const socket = open()
      return new Promise((resolve, reject) => {
        socket.on('open', () => resolve(socket))
        socket.on('close', () => reject(new Error('a socket was refused')))
      })
    },
    async close() {
      closed = true
      serve.child.kill('SIGTERM')
      const late = setTimeout(() => serve.child.kill('SIGKILL'), 20_000)
      await serve.ended
      clearTimeout(late)
      rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
    },
  }
}
