// Held by tests/shells/commands/serveCommand.spec.ts.
import { createRealEngine, type RealEngineOptions } from '#engine/createRealEngine.ts'
import { startDemo } from '../startDemo.ts'
import { type Loopback, startLoopback } from './server.ts'

export type Serving = {
  archivePath: string
  /** Where heads of chains are kept. */
  keptHeads: string
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
export async function serveArchive(serving: Serving): Promise<ServedArchive> {
  const { archivePath, keptHeads, pageFolder, port, program, demo } = serving
  const host = { host: 'loopback', capabilities: [] } as const satisfies RealEngineOptions['host']
  const engine = await createRealEngine({ archivePath, keptHeads, host, program })
  const closeEngine = async () => {
    await engine.close()
    await engine.archive.close()
  }
  let loopback: Loopback
  try {
    loopback = await startLoopback({ engine, pageFolder, port })
  } catch (thrown) {
    await closeEngine()
    throw thrown
  }
  return {
    ...loopback,
    // Filling takes some seconds, in which the page can be looked at already.
    demoStarted: demo ? startDemo(engine) : Promise.resolve(),
    async close() {
      await loopback.close()
      await closeEngine()
    },
  }
}
