import { readFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { app, BrowserWindow, dialog, ipcMain, protocol, session, shell } from 'electron'
import { troubleFrom } from '#contract/errors.ts'
import { createDispatcher } from '#contract/wire/dispatcher.ts'
import { archiveFile, keptHeadsFile, openedArchivesFile } from '../archiveFile.ts'
import { createSwitchingEngine } from '../switchingEngine.ts'
import { connectBridge } from './bridge.ts'
import { chooseArchiveFile } from './chooseArchiveFile.ts'
import { closeBeforeQuitting } from './closeBeforeQuitting.ts'
import { guardApp } from './guardApp.ts'
import { guardSession } from './guardSession.ts'
import { guardWindow } from './guardWindow.ts'
import { isCommandStart, runPackedCommand } from './packedCommands.ts'
import { pageAddress, pageScheme } from './pageAddress.ts'
import { printPdf } from './printPdf.ts'
import { archiveAskedFor, changeArchive, secondStartData } from './secondStart.ts'
import { servePage } from './servePage.ts'
import { demoNotStarted, type Telling } from './tellings.ts'
import { windowOptions } from './windowOptions.ts'

const here = dirname(fileURLToPath(import.meta.url))
const pageFolder = join(here, '..', 'renderer')

protocol.registerSchemesAsPrivileged([
  { scheme: pageScheme, privileges: { standard: true, secure: true, supportFetchAPI: true } },
])

const { values } = parseArgs({
  args: process.argv.slice(1),
  options: { archive: { type: 'string' }, demo: { type: 'boolean' } },
  strict: false,
  allowPositionals: true,
})

// Two programs on one archive would take its lock from each other: a second start hands over to the first.
if (isCommandStart(process.argv)) void runPackedCommand(here).then((code) => app.exit(code ?? 1), giveUp)
else if (app.requestSingleInstanceLock(secondStartData(values.archive))) app.whenReady().then(start).catch(giveUp)
else app.quit()

async function start(): Promise<void> {
  const surroundings = { platform: process.platform, home: app.getPath('home'), environment: process.env }
  const archivePath =
    typeof values.archive === 'string' ? values.archive : archiveFile(values.demo ? 'demo' : 'own', surroundings)
  const engine = await createSwitchingEngine({
    ...{ archivePath, demo: values.demo === true },
    places: { own: archiveFile('own', surroundings), demo: archiveFile('demo', surroundings) },
    openedFile: openedArchivesFile(surroundings),
    keptHeads: keptHeadsFile(surroundings),
    host: 'desktop',
    program: `Breakledger ${app.getVersion()}`,
    chooseFile: (purpose) => chooseArchiveFile(purpose, dialog),
    printPdf: (html) => printPdf(html, (options) => new BrowserWindow(options)),
  })
  closeBeforeQuitting(app, engine.close, giveUp)

  connectBridge({
    ipc: ipcMain,
    dispatch: createDispatcher(engine.handlers),
    subscribe: engine.subscribe,
    receivers: () => BrowserWindow.getAllWindows().map((window) => window.webContents),
  })
  protocol.handle(pageScheme, (request) =>
    servePage(request, async (segments) => new Uint8Array(await readFile(join(pageFolder, ...segments)))),
  )
  guardSession(session.defaultSession, tell)
  guardApp(app, tell)
  app.on('second-instance', (_event, _words, _folder, data) => {
    BrowserWindow.getAllWindows()[0]?.show()
    const asked = archiveAskedFor(data, engine.path())
    if (asked !== null) void changeArchive(asked, { app, dialog })
  })
  app.on('activate', () => BrowserWindow.getAllWindows().length === 0 && openWindow())
  app.on('window-all-closed', () => app.quit())
  openWindow()
  // Filling takes some seconds, in which the page can be looked at already.
  engine.startDemo().catch((thrown: unknown) => tell(demoNotStarted(troubleFrom(thrown))))
}

function openWindow(): void {
  const window = new BrowserWindow(windowOptions({ preload: join(here, 'preload.cjs') }))
  guardWindow(window.webContents, { openExternal: (url) => void shell.openExternal(url), tell, dialog, now: Date.now })
  window.once('ready-to-show', () => window.show())
  void window.loadURL(pageAddress)
}

function tell(telling: Telling): void {
  void dialog.showMessageBox({ ...telling, type: 'warning' })
}

function giveUp(thrown: unknown): void {
  const { message, hint } = troubleFrom(thrown)
  dialog.showErrorBox('Breakledger has to stop', `${message}\n\n${hint}`)
  app.exit(1)
}
