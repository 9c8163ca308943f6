// Held by tests/shells/commands/demoCommand.spec.ts.
import { Trouble } from '#contract/errors.ts'
import type { ArchiveInfo } from '#contract/keeping/archive.ts'
import type { Progress } from '#contract/tasks.ts'
import { localDayOf } from '#domain/programme/calendar/calendarDay.ts'
import { openOwnArchive } from './core/realParts.ts'
import { demoMakers } from './demoMakers.ts'
import { fillDemo } from './keeping/demo/fillDemo.ts'
import { watchChain } from './keeping/watchChain.ts'

/** An archive with the demo study in it, new or filled up. Rejects with Trouble `conflict` when it holds anything else or all of it. */
export async function createDemoArchive(
  path: string,
  program: string,
  keptHeads: string,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<ArchiveInfo> {
  const archive = await openOwnArchive(path, program)
  try {
    const watch = await watchChain(archive, keptHeads)
    await fillDemo(archive, program, demoMakers, onProgress, signal, localDayOf(new Date().toISOString()))
    await watch.close()
    return await archive.info()
  } catch (thrown) {
    if (signal.aborted)
      throw new Trouble(
        'cancelled',
        `Filling ${path} was stopped; it holds a part of the demo study.`,
        'Give the same command again to fill in the rest.',
      )
    throw thrown
  } finally {
    await archive.close()
  }
}
