import { describe, expect, test } from 'vitest'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { connectBridge, isOwnSender } from '#shells/desktop/bridge.ts'
import { callChannel, eventChannel } from '#shells/desktop/channels.ts'
import { createFakeElectron, type FakeFrame } from '#tests/fakes/fakeElectron.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

const own: FakeFrame = { url: 'breakledger://app/', parent: null }

function desktop() {
  const electron = createFakeElectron()
  const engine = createScriptedEngine({ 'ports.list': async () => [] })
  const windows = [electron.openWindow(own), electron.openWindow(own)]
  const disconnect = connectBridge({
    ipc: electron.ipcMain,
    dispatch: createDispatcher(engine.handlers),
    subscribe: engine.subscribe,
    receivers: () => windows.map(({ webContents }) => webContents),
  })
  return { electron, engine, windows, disconnect }
}

const later = () => new Promise((resolve) => setImmediate(resolve))

describe('connectBridge', () => {
  test('answers the page', async () => {
    const { windows } = desktop()
    expect(await windows[0]!.ipcRenderer.invoke(callChannel, 'ports.list', {})).toEqual({ ok: true, value: [] })
  })

  test.each<[string, FakeFrame | null]>([
    ['a frame that is gone', null],
    ['a frame inside the page', { url: 'breakledger://app/', parent: own }],
    ['a file', { url: 'file:///home/person/page.html', parent: null }],
    ['a data address', { url: 'data:text/html,x', parent: null }],
    ['an empty page', { url: 'about:blank', parent: null }],
    ['a page of the web', { url: 'https://app/', parent: null }],
    ['another host of our scheme', { url: 'breakledger://evil/', parent: null }],
    ['a name that begins like ours', { url: 'breakledger://app.evil.example/', parent: null }],
    ['no address', { url: '', parent: null }],
  ])('refuses %s, and no handler runs', async (_what, frame) => {
    const { electron } = desktop()
    const answer = await electron.openWindow(frame).ipcRenderer.invoke(callChannel, 'ports.list', {})
    expect(answer).toMatchObject({ ok: false, error: { code: 'denied' } })
    expect(isOwnSender({ senderFrame: frame })).toBe(false)
  })

  test('tells every window that is still there', async () => {
    const { engine, windows } = desktop()
    const heard: unknown[][] = [[], []]
    windows.forEach(({ ipcRenderer }, index) => {
      ipcRenderer.on(eventChannel, (_event, name, payload) => heard[index]!.push([name, payload]))
    })
    engine.emit('task.progress', { task: 'verify', done: 1, total: 2 })
    windows[1]!.destroy()
    engine.emit('task.progress', { task: 'verify', done: 2, total: 2 })
    await later()
    expect(heard.map(({ length }) => length)).toEqual([2, 1])
    expect(heard[0]![1]).toEqual(['task.progress', { task: 'verify', done: 2, total: 2 }])
  })

  test('takes its channel once: a second bridge is refused', () => {
    const { electron, engine } = desktop()
    const parts = { dispatch: createDispatcher(engine.handlers), subscribe: engine.subscribe, receivers: () => [] }
    expect(() => connectBridge({ ipc: electron.ipcMain, ...parts })).toThrow('second handler')
  })

  test('says nothing more once it is disconnected', async () => {
    const { engine, windows, disconnect } = desktop()
    const heard: unknown[] = []
    windows[0]!.ipcRenderer.on(eventChannel, (_event, name) => heard.push(name))
    disconnect()
    engine.emit('task.progress', { task: 'verify', done: 1, total: 2 })
    await later()
    expect(heard).toEqual([])
    expect(engine.listeners()).toBe(0)
  })
})
