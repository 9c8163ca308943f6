import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createRealEngine } from '#engine/createRealEngine.ts'

export type RealEngine = Awaited<ReturnType<typeof createRealEngine>>

/** The engine as the program has it: archive, disk, threads and time are real. */
export type OwnEngine = { engine: RealEngine; close(): Promise<void> }

/** Opens the engine on a demo archive of its own, which is thrown away in the end. `fill`: puts something into the file first. */
export async function openOwnEngine(fill?: (archivePath: string) => Promise<void>): Promise<OwnEngine> {
  const folder = mkdtempSync(join(tmpdir(), 'breakledger-own-'))
  const archivePath = join(folder, 'own.breakledger')
  await fill?.(archivePath)
  const engine = await createRealEngine({
    archivePath,
    host: { host: 'loopback', capabilities: [] },
    program: 'Breakledger test',
    demo: true,
  })
  return {
    engine,
    async close() {
      await engine.close()
      await engine.archive.close()
      rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
    },
  }
}
