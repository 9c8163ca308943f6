import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { BrowserWindow, BrowserWindowConstructorOptions } from 'electron'

/** A window that nobody sees, without scripts, a preload or anything of the page's session. */
const printingWindow: BrowserWindowConstructorOptions = {
  show: false,
  webPreferences: {
    ...{ sandbox: true, contextIsolation: true, nodeIntegration: false, javascript: false },
    partition: 'printing',
  },
}

/** Prints an HTML text as PDF on paper of the size that it names, by a window of this program that nobody sees. */
export async function printPdf(
  html: string,
  open: (options: BrowserWindowConstructorOptions) => Pick<BrowserWindow, 'loadFile' | 'webContents' | 'destroy'>,
): Promise<Uint8Array<ArrayBuffer>> {
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-print-'))
  const window = open(printingWindow)
  try {
    // Too long for a data: address
    const file = join(folder, 'page.html')
    await writeFile(file, html)
    await window.loadFile(file)
    return new Uint8Array(await window.webContents.printToPDF({ preferCSSPageSize: true, printBackground: true }))
  } finally {
    window.destroy()
    await rm(folder, { recursive: true, force: true })
  }
}
