import { expect, test, vi } from 'vitest'
import { eventChannel } from '#shells/desktop/channels.ts'
import { createFakeElectron } from '#tests/fakes/fakeElectron.ts'

test('the page gets two functions, and events without the object that carries their sender', async () => {
  const window = createFakeElectron().openWindow(null)
  vi.doMock('electron', () => ({ ipcRenderer: window.ipcRenderer, contextBridge: window.contextBridge }))
  await import('#shells/desktop/preload.ts')
  vi.doUnmock('electron')

  expect(Object.keys(window.mainWorld)).toEqual(['breakledger'])
  const exposed = window.mainWorld.breakledger as Record<string, (...values: never[]) => unknown>
  expect(Object.keys(exposed).sort()).toEqual(['call', 'subscribe'])

  const heard: unknown[][] = []
  exposed.subscribe!(((...values: unknown[]) => heard.push(values)) as never)
  window.webContents.send(eventChannel, 'trouble', { code: 'internal' })
  await new Promise((resolve) => setImmediate(resolve))
  expect(heard).toEqual([['trouble', { code: 'internal' }]])
})
