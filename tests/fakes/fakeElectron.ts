import type { ContextBridge, IpcMain, IpcMainInvokeEvent, IpcRenderer, WebContents } from 'electron'

/** The frame that a message claims to come from. */
export type FakeFrame = { url: string; parent: FakeFrame | null }

/** As much of one window as the desktop shell's preload and bridge touch. */
export type FakeWindow = {
  ipcRenderer: Pick<IpcRenderer, 'invoke' | 'on' | 'off'>
  contextBridge: Pick<ContextBridge, 'exposeInMainWorld'>
  webContents: Pick<WebContents, 'send' | 'isDestroyed'>
  /** What the preload put into the page's world. */
  mainWorld: Record<string, unknown>
  destroy(): void
}

export type FakeElectron = {
  ipcMain: Pick<IpcMain, 'handle' | 'removeHandler'>
  /** senderFrame: null stands for a frame that is gone when its message arrives. */
  openWindow(senderFrame: FakeFrame | null): FakeWindow
}

type Handler = (event: IpcMainInvokeEvent, ...values: unknown[]) => unknown

/**
 * Electron's IPC and context bridge without Electron, as they behave: values are copied by structured clone in both
 * directions, a second handler is refused, a thrown error loses everything but its message, events arrive later and in order,
 * and what crosses the context bridge is copied with its functions wrapped.
 */
export function createFakeElectron(): FakeElectron {
  const handlers = new Map<string, Handler>()

  const ipcMain: FakeElectron['ipcMain'] = {
    handle(channel, listener) {
      if (handlers.has(channel)) throw new Error(`Attempted to register a second handler for '${channel}'`)
      handlers.set(channel, listener as Handler)
    },
    removeHandler: (channel) => void handlers.delete(channel),
  }

  async function invoke(senderFrame: FakeFrame | null, channel: string, values: unknown[]): Promise<unknown> {
    // Cloned before anything is awaited, as Electron does: later changes by the page do not travel.
    const copies = structuredClone(values)
    const handler = handlers.get(channel)
    try {
      if (handler === undefined) throw new Error(`No handler registered for '${channel}'`)
      return structuredClone(await handler({ senderFrame } as unknown as IpcMainInvokeEvent, ...copies))
    } catch (thrown) {
      throw new Error(`Error invoking remote method '${channel}': ${String(thrown)}`)
    }
  }

  return {
    ipcMain,
    openWindow(senderFrame) {
      const listeners = new Map<string, Set<(...values: unknown[]) => void>>()
      const mainWorld: Record<string, unknown> = {}
      let destroyed = false
      const ipcRenderer = {
        invoke: (channel: string, ...values: unknown[]) => invoke(senderFrame, channel, values),
        on(channel: string, listener: (...values: unknown[]) => void) {
          const known = listeners.get(channel) ?? new Set()
          listeners.set(channel, known.add(listener))
          return ipcRenderer
        },
        off(channel: string, listener: (...values: unknown[]) => void) {
          listeners.get(channel)?.delete(listener)
          return ipcRenderer
        },
      }
      return {
        ipcRenderer: ipcRenderer as unknown as FakeWindow['ipcRenderer'],
        mainWorld,
        contextBridge: {
          exposeInMainWorld(name: string, api: unknown) {
            if (Object.hasOwn(mainWorld, name))
              throw new Error('Cannot bind an API on top of an existing property on the window object')
            mainWorld[name] = acrossBridge(api)
          },
        },
        webContents: {
          isDestroyed: () => destroyed,
          send(channel: string, ...values: unknown[]) {
            if (destroyed) throw new TypeError('Object has been destroyed')
            const copies = structuredClone(values)
            setImmediate(() => {
              for (const listener of listeners.get(channel) ?? []) listener({ senderId: 0 }, ...copies)
            })
          },
        },
        destroy() {
          destroyed = true
        },
      }
    },
  }
}

/** What arrives on the other side of the context bridge: a copy, frozen, its functions wrapped, its errors reduced to their message. */
function acrossBridge(value: unknown): unknown {
  if (typeof value === 'function')
    return (...values: unknown[]) => {
      try {
        return acrossBridge(value(...values.map(acrossBridge)))
      } catch (thrown) {
        throw acrossBridge(thrown)
      }
    }
  if (typeof value === 'symbol') throw new Error('A symbol cannot cross the context bridge')
  if (typeof value !== 'object' || value === null) return value
  if (value instanceof Promise)
    return value.then(acrossBridge, (thrown) => {
      throw acrossBridge(thrown)
    })
  if (value instanceof Error) return new Error(value.message)
  if (Array.isArray(value)) return Object.freeze(value.map(acrossBridge))
  const prototype: unknown = Object.getPrototypeOf(value)
  if (prototype !== Object.prototype && prototype !== null) return structuredClone(value)
  return Object.freeze(Object.fromEntries(Object.entries(value).map(([key, item]) => [key, acrossBridge(item)])))
}
