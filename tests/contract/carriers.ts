import { fileURLToPath } from 'node:url'
import { vi } from 'vitest'
import { WebSocket } from 'ws'
import { type EventName, events } from '#contract/events.ts'
import type { Carrier } from '#contract/wire/carrier.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import type { Engine } from '#engine/core/engine.ts'
import { createReconnectingCarrier } from '#renderer/host/reconnectingCarrier.ts'
import { connectBridge } from '#shells/desktop/bridge.ts'
import { pageAddress } from '#shells/desktop/pageAddress.ts'
import { startLoopback } from '#shells/loopback/server.ts'
import { createFakeElectron } from '#tests/fakes/fakeElectron.ts'

/** A way from the page to the engine, ready for use. */
export type ConnectedCarrier = { carrier: Carrier; close(): Promise<void> }

/** Every host's way, by name; each is made of the product's own parts, with only Electron and the page's window replaced. */
export const carriers: Record<string, (engine: Pick<Engine, 'handlers' | 'subscribe'>) => Promise<ConnectedCarrier>> = {
  'a direct call': async (engine) => {
    const dispatch = createDispatcher(engine.handlers)
    const names = Object.keys(events) as EventName[]
    const ends = new Set<() => void>()
    return {
      carrier: {
        call: dispatch,
        subscribe(listener) {
          const own = names.map((name) => engine.subscribe(name, (payload) => listener(name, payload)))
          const endAll = () => {
            for (const end of own) end()
          }
          ends.add(endAll)
          return endAll
        },
      },
      async close() {
        for (const end of ends) end()
      },
    }
  },

  'Electron IPC': async (engine) => {
    const electron = createFakeElectron()
    const window = electron.openWindow({ url: pageAddress, parent: null })
    const disconnect = connectBridge({
      ipc: electron.ipcMain,
      dispatch: createDispatcher(engine.handlers),
      subscribe: engine.subscribe,
      receivers: () => [window.webContents],
    })
    vi.resetModules()
    vi.doMock('electron', () => ({ ipcRenderer: window.ipcRenderer, contextBridge: window.contextBridge }))
    await import('#shells/desktop/preload.ts')
    vi.doUnmock('electron')
    return { carrier: window.mainWorld.breakledger as Carrier, close: async () => disconnect() }
  },

  'a WebSocket': async (engine) => {
    const loopback = await startLoopback({ engine, pageFolder: emptyPage, port: 0 })
    const { cookie, tab } = await exchangeTicket(loopback.url)
    const { origin, host } = new URL(loopback.url)
    let closed = false
    const { carrier, watchLink } = createReconnectingCarrier({
      open: () => new WebSocket(`ws://${host}/socket`, ['breakledger', tab], { origin, headers: { cookie } }) as never,
      after: (seconds, call) => void (closed || setTimeout(call, seconds * 1000)),
    })
    await new Promise<void>((resolve) => watchLink((link) => link === 'connected' && resolve()))
    return {
      carrier,
      async close() {
        closed = true
        await loopback.close()
      },
    }
  },
}

/** A page of nothing but its head, for tests that need no more. */
export const emptyPage = fileURLToPath(new URL('emptyPage', import.meta.url))

/** Opens the printed address as a browser does; resolves with the cookie and the tab's secret that it hands out. */
export async function exchangeTicket(url: string): Promise<{ cookie: string; tab: string }> {
  const answer = await fetch(url)
  return {
    cookie: (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? '',
    tab: /<meta name="breakledger-tab" content="([\w-]+)"/.exec(await answer.text())?.[1] ?? '',
  }
}
