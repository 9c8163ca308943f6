import { EventEmitter } from 'node:events'
import type { App, Session } from 'electron'
import { createFakeElectron, type FakeWindow } from './fakeElectron.ts'

type OpenHandler = (details: { url: string }) => { action: 'allow' | 'deny' }

/** What a test sees of a window that main opened. */
export class FakeBrowserWindow extends EventEmitter {
  static opened: FakeBrowserWindow[] = []
  static getAllWindows = () => FakeBrowserWindow.opened
  readonly options: Record<string, unknown>
  readonly loaded: string[] = []
  reloads = 0
  shown = 0
  openHandler: OpenHandler = () => ({ action: 'allow' })
  /** What a frame of this window may do. */
  frame: FakeWindow | undefined
  readonly webContents = Object.assign(new EventEmitter(), {
    setWindowOpenHandler: (handler: OpenHandler) => {
      this.openHandler = handler
    },
    isDestroyed: () => false,
    reload: () => {
      this.reloads++
    },
    send: (channel: string, ...values: unknown[]) => this.frame?.webContents.send(channel, ...values),
  })

  constructor(options: Record<string, unknown>) {
    super()
    this.options = options
    FakeBrowserWindow.opened.push(this)
  }
  show() {
    this.shown++
  }
  async loadURL(address: string) {
    this.loaded.push(address)
  }
  /** Sends an event that can be called off, as Electron does before a navigation; true when it was called off. */
  isPrevented(name: string, details: Record<string, unknown>): boolean {
    return sendPreventable(this.webContents, name, details)
  }
}

/** Emits an event whose default a listener may prevent; true when one did. */
export function sendPreventable(emitter: EventEmitter, name: string, details: Record<string, unknown> = {}): boolean {
  let prevented = false
  const preventDefault = () => {
    prevented = true
  }
  emitter.emit(name, { ...details, preventDefault })
  return prevented
}

/** The `electron` module as main.ts sees it, with a record of what was done through it. */
export function createFakeElectronMain(surroundings: { isFirst: boolean; answer?: number }) {
  FakeBrowserWindow.opened = []
  const ipc = createFakeElectron()
  const done = {
    schemes: [] as unknown[],
    external: [] as string[],
    errors: [] as string[],
    exits: [] as number[],
    /** What boxes said. */
    told: [] as string[],
    lockData: [] as unknown[],
    relaunches: [] as unknown[],
    quits: 0,
    protocolHandlers: new Map<string, (request: { method: string; url: string }) => Promise<Response>>(),
    permissionRequest: undefined as Parameters<Session['setPermissionRequestHandler']>[0] | undefined,
    permissionCheck: undefined as Parameters<Session['setPermissionCheckHandler']>[0] | undefined,
    devicePermission: undefined as Parameters<Session['setDevicePermissionHandler']>[0] | undefined,
  }
  const app = Object.assign(new EventEmitter(), {
    isPackaged: true,
    requestSingleInstanceLock: (data: unknown) => {
      done.lockData.push(data)
      return surroundings.isFirst
    },
    relaunch: (options: unknown) => {
      done.relaunches.push(options)
    },
    whenReady: async () => {},
    getPath: (_name: Parameters<App['getPath']>[0]) => '/home/ada',
    getVersion: () => '1.2.3',
    quit: () => {
      done.quits++
    },
    exit: (code: number) => {
      done.exits.push(code)
    },
  } satisfies { [Key in keyof App]?: unknown })
  const session = Object.assign(new EventEmitter(), {
    setPermissionRequestHandler: (handler: NonNullable<typeof done.permissionRequest>) => {
      done.permissionRequest = handler
    },
    setPermissionCheckHandler: (handler: NonNullable<typeof done.permissionCheck>) => {
      done.permissionCheck = handler
    },
    setDevicePermissionHandler: (handler: NonNullable<typeof done.devicePermission>) => {
      done.devicePermission = handler
    },
  })
  return {
    ipc,
    done,
    app,
    session,
    module: {
      app,
      BrowserWindow: FakeBrowserWindow,
      ipcMain: ipc.ipcMain,
      dialog: {
        showErrorBox: (title: string, text: string) => done.errors.push(`${title}: ${text}`),
        showMessageBox: async ({ message }: { message: string }) => {
          done.told.push(message)
          return { response: surroundings.answer ?? 1 }
        },
        showMessageBoxSync: ({ message }: { message: string }) => {
          done.told.push(message)
          return surroundings.answer ?? 1
        },
      },
      shell: { openExternal: async (address: string) => void done.external.push(address) },
      protocol: {
        registerSchemesAsPrivileged: (schemes: unknown[]) => done.schemes.push(...schemes),
        handle: (scheme: string, handler: never) => done.protocolHandlers.set(scheme, handler),
      },
      session: { defaultSession: session },
    },
  }
}
