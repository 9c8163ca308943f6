import { Trouble } from '#contract/errors.ts'
import type { ArchiveInfo, Progress } from '#contract/records/archive.ts'
import { fillDemo } from './fillDemo.ts'
import { openOwnArchive } from './realParts.ts'

/** A new archive with the demo study in it. Rejects with Trouble `conflict` when the archive holds anything already. */
export async function createDemoArchive(
  path: string,
  program: string,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<ArchiveInfo> {
  const archive = await openOwnArchive(path, program)
  try {
    await fillDemo(archive, program, onProgress, signal)
    return await archive.info()
  } catch (thrown) {
    if (signal.aborted)
      throw new Trouble(
        'cancelled',
        `Filling ${path} was stopped; it holds a part of the demo study.`,
        'Delete the file, or name another one, and start again.',
      )
    throw thrown
  } finally {
    await archive.close()
  }
}
