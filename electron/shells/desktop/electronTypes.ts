/**
 * The few shapes of Electron that the bridge and the guards touch. Naming them here keeps Electron itself out of every file
 * but main.ts and preload.ts; tests/shells/desktop/electronTypes.check.ts compiles them against Electron's own types.
 */

/** Electron's WebFrameMain. */
export type SenderFrame = { readonly url: string; readonly parent: SenderFrame | null }

/** Electron's IpcMainInvokeEvent. */
export type InvokeEvent = { readonly senderFrame: SenderFrame | null }

/** Electron's ipcMain. */
export type MainIpc = {
  handle(channel: string, listener: (event: InvokeEvent, ...values: unknown[]) => Promise<unknown>): void
}

/** Electron's WebContents, as a receiver of events. */
export type EventReceiver = { isDestroyed(): boolean; send(channel: string, ...values: unknown[]): void }
