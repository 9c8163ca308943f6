// Held by tests/shells/commands/rebuildCommand.spec.ts.
import { existsSync } from 'node:fs'
import { openArchive } from '#archive/openArchive.ts'
import { Trouble } from '#contract/errors.ts'
import type { ArchiveInfo } from '#contract/keeping/archive.ts'
import type { Progress } from '#contract/tasks.ts'

/** Makes the lists of an archive that nobody else has open again from its records. Rejects with Trouble `archive-missing` when there is none. */
export async function rebuildLists(
  path: string,
  program: string,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<ArchiveInfo> {
  // Opening for writing would make one.
  if (!existsSync(path)) throw new Trouble('archive-missing', `There is no archive ${path}.`, 'Check the name.')
  const archive = await openArchive({ path, program, onProgress })
  try {
    await archive.rebuildDerived(onProgress, signal)
    return await archive.info()
  } finally {
    await archive.close()
  }
}
