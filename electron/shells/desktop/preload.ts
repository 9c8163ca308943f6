import { contextBridge, ipcRenderer } from 'electron'
import type { Carrier } from '#contract/wire/carrier.ts'
import { callChannel, eventChannel, exposedName } from './channels.ts'

// The page gets two functions: never ipcRenderer itself, never an event object, which carries the sender.
const carrier: Carrier = {
  call: (name, input) => ipcRenderer.invoke(callChannel, name, input),
  subscribe(listener) {
    const hear = (_event: unknown, name: string, payload: unknown) => listener(name, payload)
    ipcRenderer.on(eventChannel, hear)
    return () => void ipcRenderer.off(eventChannel, hear)
  },
}

contextBridge.exposeInMainWorld(exposedName, carrier)
