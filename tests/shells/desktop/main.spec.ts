import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { callChannel, eventChannel } from '#shells/desktop/channels.ts'
import { createFakeElectronMain, FakeBrowserWindow, sendPreventable } from '#tests/fakes/fakeElectronMain.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

const opened: unknown[] = []
const closed: string[] = []
const engine = createScriptedEngine({ 'ports.list': async () => [] })
let openingFails: boolean

/** Runs main.ts once more, as a fresh program. */
async function startProgram(isFirst = true) {
  const electron = createFakeElectronMain({ isFirst })
  vi.resetModules()
  vi.doMock('electron', () => electron.module)
  vi.doMock('#engine/createRealEngine.ts', () => ({
    createRealEngine: async (options: unknown) => {
      // From the same fresh set of modules as main.ts, since it tells a Trouble by its class.
      const { Trouble } = await import('#contract/errors.ts')
      if (openingFails)
        throw new Trouble('archive-in-use', 'The archive is open in another program.', 'Close that one first.')
      opened.push(options)
      return {
        ...engine,
        close: async () => void closed.push('engine'),
        archive: { close: async () => void closed.push('archive') },
      }
    },
  }))
  await import('#shells/desktop/main.ts')
  await vi.waitFor(() =>
    expect(FakeBrowserWindow.opened.length + electron.done.exits.length + electron.done.quits).toBe(1),
  )
  return electron
}

beforeEach(() => {
  opened.length = 0
  closed.length = 0
  openingFails = false
})
afterEach(() => {
  vi.doUnmock('electron')
  vi.doUnmock('#engine/createRealEngine.ts')
})

describe('main', () => {
  test('opens the archive in the data folder and one hardened window on the page', async () => {
    await startProgram()
    expect(opened).toEqual([
      expect.objectContaining({
        archivePath: expect.stringMatching(/breakledger$/i),
        host: { host: 'desktop', capabilities: [] },
        program: 'Breakledger 1.2.3',
      }),
    ])
    const window = FakeBrowserWindow.opened[0]!
    expect(window.options).toMatchObject({ webPreferences: { sandbox: true, contextIsolation: true } })
    expect(window.loaded).toEqual(['breakledger://app/'])
    window.emit('ready-to-show')
    expect(window.shown).toBe(1)
  })

  test('answers the page and tells it what happens', async () => {
    const { ipc } = await startProgram()
    const frame = ipc.openWindow({ url: 'breakledger://app/', parent: null })
    FakeBrowserWindow.opened[0]!.frame = frame
    expect(await frame.ipcRenderer.invoke(callChannel, 'ports.list', {})).toEqual({ ok: true, value: [] })
    const heard = new Promise((resolve) => frame.ipcRenderer.on(eventChannel, (_event, name) => resolve(name)))
    engine.emit('task.progress', { task: 'verify', done: 1, total: 2 })
    expect(await heard).toBe('task.progress')
  })

  test('registers its scheme as a secure one and serves nothing but the page under it', async () => {
    const { done } = await startProgram()
    expect(done.schemes).toEqual([{ scheme: 'breakledger', privileges: expect.objectContaining({ secure: true }) }])
    const answer = await done.protocolHandlers.get('breakledger')!({
      method: 'GET',
      url: 'breakledger://app/..%2f..%2fpackage.json',
    })
    expect(answer.status).toBe(404)
  })

  test('opens no second window and hands only https to the browser', async () => {
    const { done } = await startProgram()
    const { openHandler } = FakeBrowserWindow.opened[0]!
    for (const url of ['https://example.org/', 'http://example.org/', 'file:///etc/passwd', 'breakledger://app/'])
      expect(openHandler({ url })).toEqual({ action: 'deny' })
    expect(done.external).toEqual(['https://example.org/'])
  })

  test('stays on the page: every other navigation, in whatever frame, is called off', async () => {
    const { done } = await startProgram()
    const window = FakeBrowserWindow.opened[0]!
    const go = (url: string, isMainFrame = true) => window.isPrevented('will-frame-navigate', { url, isMainFrame })
    expect(go('breakledger://app/')).toBe(false)
    expect(go('breakledger://app/', false)).toBe(true)
    expect(go('https://example.org/next')).toBe(true)
    expect(go('https://example.org/frame', false)).toBe(true)
    expect(go('file:///etc/passwd')).toBe(true)
    expect(window.isPrevented('will-attach-webview', {})).toBe(true)
    expect(done.external).toEqual(['https://example.org/next'])
  })

  test('grants no permission', async () => {
    const { done } = await startProgram()
    const answers: boolean[] = []
    done.permissionRequest!(null as never, 'media', (granted) => answers.push(granted), null as never)
    expect(answers).toEqual([false])
    expect(done.permissionCheck!(null, 'serial', 'breakledger://app', null as never)).toBe(false)
  })

  test('waits on quitting until engine and archive are closed, and quits once', async () => {
    const { app, done } = await startProgram()
    expect(sendPreventable(app, 'before-quit')).toBe(true)
    expect(sendPreventable(app, 'before-quit')).toBe(true)
    await vi.waitFor(() => expect(done.exits).toEqual([0]))
    expect(closed).toEqual(['engine', 'archive'])
  })

  test('a second start opens nothing and shows the first window', async () => {
    const second = await startProgram(false)
    expect([opened, second.done.quits]).toEqual([[], 1])
    const first = await startProgram()
    first.app.emit('second-instance')
    expect(FakeBrowserWindow.opened[0]!.shown).toBe(1)
  })

  test('an archive that cannot be opened is told in a window, with what to do, and the program ends', async () => {
    openingFails = true
    const { done } = await startProgram()
    expect(done.errors).toEqual([
      'Breakledger has to stop: The archive is open in another program.\n\nClose that one first.',
    ])
    expect(done.exits).toEqual([1])
  })
})
