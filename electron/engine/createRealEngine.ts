// Held by tests/contract/realEngine.spec.ts.
import { systemClock } from '#acquisition/clock.ts'
import { listenOnPort } from '#acquisition/serial/listenOnPort.ts'
import type { Archive } from '#archive/archive.ts'
import type { Bench } from './bench/bench.ts'
import type { Engine, EngineParts } from './core/engine.ts'
import { listRealPorts, openOwnArchive, openRealSource } from './core/realParts.ts'
import { createEngine, type EngineOptions } from './createEngine.ts'
import { watchChain } from './keeping/watchChain.ts'

export type RealEngineOptions = EngineOptions & {
  /** Made when it is not there, with its folder. */
  archivePath: string
  host: EngineParts['host']
  /** Where heads of chains are kept, outside every archive; absent: nowhere. */
  keptHeads?: string
  /** How the host prints; absent: it cannot. */
  printPdf?: EngineParts['printPdf']
  /** Name and version of the program, as records keep it. */
  program: string
}

/** An engine on real devices, time and disk. Its archive is open; who made it closes first the engine, then the archive. */
export async function createRealEngine(
  options: RealEngineOptions,
): Promise<Engine & { archive: Archive; bench: Bench }> {
  const { archivePath, host, program } = options
  const archive = await openOwnArchive(archivePath, program)
  try {
    const watch = options.keptHeads === undefined ? null : await watchChain(archive, options.keptHeads)
    const parts: EngineParts = {
      archive,
      clock: systemClock,
      openSource: openRealSource,
      listPorts: listRealPorts,
      listen: (path, baudRate, seconds) => listenOnPort(path, baudRate, seconds, systemClock),
      host,
      program,
      chainFinding: watch?.finding ?? null,
      ...(options.printPdf === undefined ? {} : { printPdf: options.printPdf }),
    }
    const engine = await createEngine(parts, options)
    return {
      ...engine,
      archive,
      async close() {
        await engine.close()
        await watch?.close()
      },
    }
  } catch (thrown) {
    await archive.close()
    throw thrown
  }
}
