import type { IpcMain, IpcMainInvokeEvent, WebContents, WebFrameMain } from 'electron'
import type { EventReceiver, InvokeEvent, MainIpc, SenderFrame } from '#shells/desktop/electronTypes.ts'

// No test: this file compiles only while Electron's own types still fit the shapes that the desktop shell names.
export const frameFits = (frame: WebFrameMain): SenderFrame => frame
export const eventFits = (event: IpcMainInvokeEvent): InvokeEvent => event
export const ipcFits = (ipc: IpcMain): MainIpc => ipc
export const contentsFit = (contents: WebContents): EventReceiver => contents
