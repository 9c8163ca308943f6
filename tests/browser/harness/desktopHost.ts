import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Frame, Page } from 'playwright-core'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import type { Engine } from '#engine/core/engine.ts'
import { connectBridge } from '#shells/desktop/bridge.ts'
import type { EventReceiver } from '#shells/desktop/electronTypes.ts'
import { pageAddress } from '#shells/desktop/pageAddress.ts'
import { servePage } from '#shells/desktop/servePage.ts'
import { buildIfNeeded, projectFolder } from '#shells/start/build.ts'
import { createFakeElectron, type FakeFrame } from '#tests/fakes/fakeElectron.ts'

/**
 * Chromium knows no scheme of ours, so the page is served under this address instead. Only this prefix is exchanged when a
 * frame names itself: every other address reaches the sender's guard as it is.
 */
export const standInAddress = 'https://app/'

const ownAddress = (address: string) =>
  address.startsWith(standInAddress) ? pageAddress + address.slice(standInAddress.length) : address

const frameAsElectronTellsIt = (frame: Frame): FakeFrame => {
  const parent = frame.parentFrame()
  return { url: ownAddress(frame.url()), parent: parent === null ? null : frameAsElectronTellsIt(parent) }
}

/** Puts the desktop shell's real preload, bridge and page server around a page of Chromium; only Electron's own part is faked. */
export async function attachDesktopHost(
  page: Page,
  engine: Pick<Engine, 'handlers' | 'subscribe'>,
): Promise<() => void> {
  await buildIfNeeded('preload')
  const electron = createFakeElectron()
  const pageFolder = join(projectFolder, 'dist/renderer')

  await page.route(`${standInAddress}**`, async (route, request) => {
    const answer = await servePage(
      { method: request.method(), url: ownAddress(request.url()) },
      async (segments) => new Uint8Array(await readFile(join(pageFolder, ...segments))),
    )
    const body = Buffer.from(await answer.arrayBuffer())
    await route.fulfill({ status: answer.status, headers: Object.fromEntries(answer.headers), body })
  })
  await page.exposeBinding('electronInvoke', ({ frame }, channel: string, ...values: unknown[]) =>
    electron.openWindow(frameAsElectronTellsIt(frame)).ipcRenderer.invoke(channel, ...values),
  )
  await page.addInitScript({
    content: preloadInPage(await readFile(join(projectFolder, 'dist/desktop/preload.cjs'), 'utf8')),
  })

  // One after the other, so that events keep their order on the way into the page.
  let delivered: Promise<unknown> = Promise.resolve()
  const receiver: EventReceiver = {
    isDestroyed: () => page.isClosed(),
    send(channel, ...values) {
      const copies = structuredClone(values)
      delivered = delivered.then(() =>
        page
          .evaluate(([to, all]) => window.electronDeliver?.(to, all), [channel, copies] as const)
          .catch(() => {
            // The page went away or is being loaded anew; Electron drops such events too.
          }),
      )
    },
  }
  return connectBridge({
    ipc: electron.ipcMain,
    dispatch: createDispatcher(engine.handlers),
    subscribe: engine.subscribe,
    receivers: () => [receiver],
  })
}

declare global {
  interface Window {
    electronDeliver?(channel: string, values: unknown[]): void
  }
}

/** The built preload as it stands, with `require('electron')` answered by what tunnels to the test. */
const preloadInPage = (preload: string) => `(() => {
  const listeners = new Map()
  const ipcRenderer = {
    invoke: (channel, ...values) => window.electronInvoke(channel, ...values),
    on: (channel, listener) => void listeners.set(channel, (listeners.get(channel) ?? new Set()).add(listener)),
    off: (channel, listener) => void listeners.get(channel)?.delete(listener),
  }
  const contextBridge = {
    exposeInMainWorld: (name, api) => Object.defineProperty(window, name, { value: Object.freeze(api) }),
  }
  window.electronDeliver = (channel, values) => {
    for (const listener of listeners.get(channel) ?? []) listener({}, ...values)
  }
  const require = (name) => {
    if (name !== 'electron') throw new Error('a sandboxed preload cannot load ' + name)
    return { ipcRenderer, contextBridge }
  }
  const module = { exports: {} }
  ;((require, module, exports) => {${preload}
  })(require, module, module.exports)
})()`
