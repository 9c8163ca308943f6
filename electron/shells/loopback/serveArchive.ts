import { createRealEngine } from '#engine/realParts.ts'
import { startDemo } from '../startDemo.ts'
import { type Loopback, startLoopback } from './server.ts'

export type Serving = {
  archivePath: string
  pageFolder: string
  port: number
  /** Name and version, as the records keep it. */
  program: string
  /** Fill an empty archive with the demo study and connect the virtual amplifier. */
  demo: boolean
}

/**
 * Opens the archive and serves it to a browser on this computer. `close` ends a running capture, waits until all is on disk
 * and stops listening. Rejects with a Trouble when archive or port cannot be had; nothing stays open then.
 */
export async function serveArchive({ archivePath, pageFolder, port, program, demo }: Serving): Promise<Loopback> {
  const engine = await createRealEngine({ archivePath, host: { host: 'loopback', capabilities: [] }, program })
  const closeEngine = async () => {
    await engine.close()
    await engine.archive.close()
  }
  let loopback: Loopback | undefined
  try {
    loopback = await startLoopback({ engine, pageFolder, port })
    if (demo) await startDemo(engine)
  } catch (thrown) {
    await loopback?.close()
    await closeEngine()
    throw thrown
  }
  const { close } = loopback
  return {
    ...loopback,
    async close() {
      await close()
      await closeEngine()
    },
  }
}
