import { readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { app, BrowserWindow, dialog, ipcMain, protocol, session, shell } from 'electron'
import { troubleFrom } from '#contract/errors.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { createRealEngine } from '#engine/createRealEngine.ts'
import { archiveFile } from '../archiveFile.ts'
import { startDemo } from '../startDemo.ts'
import { connectBridge } from './bridge.ts'
import { decideNavigation } from './decideNavigation.ts'
import { pageAddress, pageScheme } from './pageAddress.ts'
import { servePage } from './servePage.ts'
import { windowOptions } from './windowOptions.ts'

const here = dirname(fileURLToPath(import.meta.url))
const pageFolder = join(here, '..', 'renderer')

protocol.registerSchemesAsPrivileged([
  { scheme: pageScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
])

// Two programs on one archive would take its lock from each other: the second start only shows the first window.
if (app.requestSingleInstanceLock()) app.whenReady().then(start).catch(giveUp)
else app.quit()

async function start(): Promise<void> {
  const { values } = parseArgs({
    args: process.argv.slice(1),
    options: { archive: { type: 'string' }, demo: { type: 'boolean' } },
    strict: false,
    allowPositionals: true,
  })
  const surroundings = { platform: process.platform, home: app.getPath('home'), environment: process.env }
  const archivePath =
    typeof values.archive === 'string' ? values.archive : archiveFile(values.demo ? 'demo' : 'own', surroundings)
  const engine = await createRealEngine({
    archivePath,
    host: { host: 'desktop', capabilities: [] },
    program: `Breakledger ${app.getVersion()}`,
  })
  if (values.demo) await startDemo(engine)
  closeBeforeQuitting(async () => {
    await engine.close()
    await engine.archive.close()
  })

  connectBridge({
    ipc: ipcMain,
    dispatch: createDispatcher(engine.handlers),
    subscribe: engine.subscribe,
    receivers: () => BrowserWindow.getAllWindows().map((window) => window.webContents),
  })
  protocol.handle(pageScheme, (request) =>
    servePage(request, async (segments) => new Uint8Array(await readFile(join(pageFolder, ...segments)))),
  )
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.defaultSession.setPermissionCheckHandler(() => false)
  app.on('second-instance', () => BrowserWindow.getAllWindows()[0]?.show())
  app.on('activate', () => BrowserWindow.getAllWindows().length === 0 && openWindow())
  app.on('window-all-closed', () => app.quit())
  openWindow()
}

function openWindow(): void {
  const window = new BrowserWindow(windowOptions({ preload: join(here, 'preload.cjs') }))
  const { webContents } = window
  webContents.setWindowOpenHandler(({ url }) => {
    if (decideNavigation(url) === 'external') void shell.openExternal(url)
    return { action: 'deny' }
  })
  webContents.on('will-frame-navigate', (event) => {
    const decision = event.isMainFrame ? decideNavigation(event.url) : 'deny'
    if (decision !== 'stay') event.preventDefault()
    if (decision === 'external') void shell.openExternal(event.url)
  })
  webContents.on('will-attach-webview', (event) => event.preventDefault())
  window.once('ready-to-show', () => window.show())
  void window.loadURL(pageAddress)
}

/** A quit waits until a running capture is on disk. */
function closeBeforeQuitting(close: () => Promise<void>): void {
  let closing = false
  app.on('before-quit', (event) => {
    event.preventDefault()
    if (!closing) close().then(() => app.exit(0), giveUp)
    closing = true
  })
}

function giveUp(thrown: unknown): void {
  const { message, hint } = troubleFrom(thrown)
  dialog.showErrorBox('Breakledger has to stop', `${message}\n\n${hint}`)
  app.exit(1)
}
