import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { callChannel, eventChannel } from '#shells/desktop/channels.ts'
import { createFakeElectronMain, FakeBrowserWindow, sendPreventable } from '#tests/fakes/fakeElectronMain.ts'
import { createScriptedEngine } from '#tests/fakes/scripted/scriptedEngine.ts'

const opened: unknown[] = []
const closed: string[] = []
const engine = createScriptedEngine({ 'ports.list': async () => [] })
let openingFails: boolean

/** Runs main.ts once more, as a fresh program. */
async function startProgram(isFirst = true, answer = 1) {
  const electron = createFakeElectronMain({ isFirst, answer })
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
  await expect.poll(() => FakeBrowserWindow.opened.length + electron.done.exits.length + electron.done.quits).toBe(1)
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
        host: { host: 'desktop', capabilities: ['switch-archive', 'choose-file', 'print-to-pdf'] },
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

  test('grants no permission but a camera without sound to its own page', async () => {
    const { done } = await startProgram()
    const own = { requestingUrl: 'breakledger://app/', isMainFrame: true, mediaTypes: ['video'], mediaType: 'video' }
    const asks = (permission: string, details: object) => {
      const answers: boolean[] = []
      const given = { ...own, ...details } as never
      done.permissionRequest!(null as never, permission as never, (granted) => answers.push(granted), given)
      return [...answers, done.permissionCheck!(null, permission as never, 'breakledger://app', given)]
    }
    expect(asks('media', {})).toEqual([true, true])
    for (const [permission, details] of [
      ['serial', {}],
      ['media', { requestingUrl: 'https://example.org/' }],
      ['media', { isMainFrame: false }],
      ['media', { mediaTypes: ['video', 'audio'], mediaType: 'audio' }],
      ['media', { mediaTypes: undefined, mediaType: undefined }],
    ] as const)
      expect(asks(permission, details), JSON.stringify([permission, details])).toEqual([false, false])
    expect(done.devicePermission!(null as never)).toBe(false)
  })

  test('loads a page that stopped anew and says so, but not for ever', async () => {
    const { done } = await startProgram()
    const window = FakeBrowserWindow.opened[0]!
    const stop = (reason: string) => window.webContents.emit('render-process-gone', {}, { reason })
    stop('clean-exit')
    expect([window.reloads, done.told]).toEqual([0, []])
    stop('crashed')
    expect([window.reloads, done.told]).toEqual([1, ['The page stopped and was loaded again.']])
    stop('oom')
    expect(window.reloads).toBe(1)
    expect(done.told[1]).toContain('not loaded a third time')
  })

  test('asks before a window closes whose page has something that is not saved', async () => {
    for (const [answer, leaves] of [
      [0, true],
      [1, false],
    ] as const) {
      const { done } = await startProgram(true, answer)
      expect(FakeBrowserWindow.opened[0]!.isPrevented('will-prevent-unload', {})).toBe(leaves)
      expect(done.told).toEqual(['Leave without saving?'])
    }
  })

  test('refuses a download and says so, unless its own page made it', async () => {
    const { done, session } = await startProgram()
    const download = (url: string) => {
      let refused = false
      const preventDefault = () => {
        refused = true
      }
      session.emit('will-download', { preventDefault }, { getURL: () => url })
      return refused
    }
    expect(download('https://example.org/file.exe')).toBe(true)
    expect(download('blob:https://example.org/1')).toBe(true)
    expect(done.told).toEqual(['A download was refused.', 'A download was refused.'])
    expect(download('blob:breakledger://app/1')).toBe(false)
    expect(done.told).toHaveLength(2)
  })

  test('trusts no certificate that does not hold, and tells no server who asks', async () => {
    const { app, done } = await startProgram()
    const answers: unknown[] = []
    const answer = (...values: unknown[]) => void answers.push(values)
    const event = { preventDefault: () => void answers.push('prevented') }
    app.emit('certificate-error', event, null, 'https://example.org/', 'net::ERR_CERT_DATE_INVALID', null, answer)
    app.emit('select-client-certificate', event, null, 'https://example.org/', [], answer)
    app.emit('login', event, null, {}, {}, answer)
    expect(answers).toEqual(['prevented', [false], 'prevented', [], 'prevented', []])
    expect(done.told).toEqual(['A connection was refused because its certificate does not hold.'])
  })

  test('waits on quitting until engine and archive are closed, and quits once', async () => {
    const { app, done } = await startProgram()
    expect(sendPreventable(app, 'before-quit')).toBe(true)
    expect(sendPreventable(app, 'before-quit')).toBe(true)
    await expect.poll(() => done.exits).toEqual([0])
    expect(closed).toEqual(['engine', 'archive'])
  })

  test('a second start opens nothing and shows the first window', async () => {
    const second = await startProgram(false)
    expect([opened, second.done.quits]).toEqual([[], 1])
    const first = await startProgram()
    expect(second.done.lockData).toEqual([{ archivePath: null }])
    first.app.emit('second-instance', {}, [], '/', { archivePath: null })
    expect(FakeBrowserWindow.opened[0]!.shown).toBe(1)
    expect(first.done.told).toEqual([])
  })

  test('a second start with another archive opens that one, after a question', async () => {
    const stays = await startProgram(true, 1)
    stays.app.emit('second-instance', {}, [], '/', { archivePath: '/else/where.breakledger' })
    await expect.poll(() => stays.done.told).toEqual(['Open /else/where.breakledger?'])
    expect(stays.done.quits).toBe(0)
    const goes = await startProgram(true, 0)
    goes.app.emit('second-instance', {}, [], '/', { archivePath: '/else/where.breakledger' })
    await expect.poll(() => goes.done.quits).toBe(1)
    expect(goes.done.relaunches).toEqual([{ args: ['--archive', '/else/where.breakledger'] }])
  })

  test('a start with --command runs that command in place of a window, and ends with its exit code', async () => {
    const { argv, exitCode } = process
    process.argv = ['breakledger', '--some-switch', '--command', 'verify', '--json']
    const ran: string[][] = []
    vi.doMock('#shells/desktop/packedCommands.ts', async (original) => {
      const actual = await original<typeof import('#shells/desktop/packedCommands.ts')>()
      const load = async () => {
        ran.push(process.argv.slice(2))
        process.exitCode = 3
      }
      return { ...actual, runPackedCommand: (folder: string) => actual.runPackedCommand(folder, load) }
    })
    try {
      const { done } = await startProgram()
      expect(done.exits).toEqual([3])
      expect(ran).toEqual([['verify', '--json']])
      expect([opened, done.lockData]).toEqual([[], []])
    } finally {
      vi.doUnmock('#shells/desktop/packedCommands.ts')
      process.argv = argv
      process.exitCode = exitCode
    }
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
