import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Trouble } from '#contract/errors.ts'

/**
 * Does some work in a folder of its own among the temporary files, which is gone afterwards, whatever became of the work. Rejects
 * as the work does, and with a Trouble where the folder cannot be made or has no room.
 */
export async function inTemporaryFolder<T>(prefix: string, work: (folder: string) => Promise<T>): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), prefix)).catch((thrown: NodeJS.ErrnoException) => {
    throw noTemporaryFiles(thrown)
  })
  try {
    return await work(folder)
  } catch (thrown) {
    throw thrown instanceof Error && isNoRoom(thrown) ? noTemporaryFiles(thrown) : thrown
  } finally {
    // A program that was ended a moment ago may still be writing there
    await rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 })
  }
}

const isNoRoom = ({ code }: NodeJS.ErrnoException) => code === 'ENOSPC' || code === 'EDQUOT' || code === 'EFBIG'

function noTemporaryFiles(thrown: NodeJS.ErrnoException): Trouble {
  return new Trouble(
    isNoRoom(thrown) ? 'disk-full' : 'denied',
    `Temporary files cannot be written in ${tmpdir()} (${thrown.message}).`,
    'Make room there, or name another folder with TMPDIR.',
  )
}
