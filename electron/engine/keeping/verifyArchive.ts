import type { VerifyReport } from '#contract/keeping/archive.ts'
import type { Progress } from '#contract/tasks.ts'
import { readArchive } from '../core/readArchive.ts'

/** Checks an archive that another program may be writing to. */
export function verifyArchive(
  path: string,
  program: string,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<VerifyReport> {
  return readArchive(path, program, (archive) => archive.verify(onProgress, signal))
}
