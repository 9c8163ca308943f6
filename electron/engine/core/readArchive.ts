import type { Archive } from '#archive/archive.ts'
import { openArchive } from '#archive/openArchive.ts'

/** Reads from an archive that another program may be writing to, and closes it again. Rejects with the Trouble of opening or reading. */
export async function readArchive<T>(
  path: string,
  program: string,
  read: (archive: Archive) => Promise<T>,
): Promise<T> {
  const archive = await openArchive({ path, program, mode: 'read' })
  try {
    return await read(archive)
  } finally {
    await archive.close()
  }
}
