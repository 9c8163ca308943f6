// Held by tests/shells/commands/serveCommand.spec.ts.
import { machinePrinter } from '#engine/programme/publishedFiles.ts'
import type { UsualPlaces } from '../knownArchives.ts'
import { createSwitchingEngine } from '../switchingEngine.ts'
import { type Loopback, startLoopback } from './server.ts'

export type Serving = {
  archivePath: string
  /** Where heads of chains are kept. */
  keptHeads: string
  /** Where archives lie that were never named, and where it is remembered which were opened. */
  places: UsualPlaces
  openedFile: string
  pageFolder: string
  port: number
  /** Name and version, as the records keep it. */
  program: string
  /** Fill an empty archive with the demo study and connect the virtual amplifier. */
  demo: boolean
}

/** What is served; `demoStarted` settles when the demo runs, or at once where none was asked for. */
export type ServedArchive = Loopback & { demoStarted: Promise<void> }

/**
 * Opens the archive and serves it to a browser on this computer. `close` ends a running capture, waits until all is on disk
 * and stops listening. Rejects with a Trouble when archive or port cannot be had; nothing stays open then.
 */
export async function serveArchive({ pageFolder, port, ...opened }: Serving): Promise<ServedArchive> {
  const print = machinePrinter(process.env)
  const closing = new AbortController()
  const engine = await createSwitchingEngine({
    ...{ ...opened, host: 'loopback' },
    ...(print === null ? {} : { printPdf: (html: string) => print(html, closing.signal) }),
  })
  let loopback: Loopback
  try {
    loopback = await startLoopback({ engine, pageFolder, port })
  } catch (thrown) {
    await engine.close()
    throw thrown
  }
  return {
    ...loopback,
    // Filling takes some seconds, in which the page can be looked at already.
    demoStarted: engine.startDemo(),
    async close() {
      await loopback.close()
      // Nobody waits any longer for what a Chromium may print for minutes
      closing.abort()
      await engine.close()
    },
  }
}
