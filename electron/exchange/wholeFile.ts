import { randomUUID } from 'node:crypto'
import { open, realpath, rename, rm, stat, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { Trouble } from '#contract/errors.ts'

/**
 * Writes a file as a whole: what stood there before stays until all is on disk. A link is followed, and a device or a pipe is
 * written to, never replaced by a file. Rejects with a Trouble that names the file; an archive is never replaced.
 */
export async function writeWholeFile(file: string, content: string | Uint8Array): Promise<void> {
  try {
    const target = await realpath(file).catch(() => file)
    if (await isStream(target)) return await writeFile(target, content)
    await refuseDatabase(target)
    await replaceFile(target, content)
  } catch (thrown) {
    throw writingTrouble(file, thrown as NodeJS.ErrnoException)
  }
}

async function isStream(target: string): Promise<boolean> {
  const found = await stat(target).catch(() => null)
  return found !== null && !found.isFile() && !found.isDirectory()
}

/** How a file of SQLite begins. Source: SQLite's file format, 1.3.1. */
const databaseMark = 'SQLite format 3\0'

/** Rejects with the trouble "conflict" for a file that is a database, as an archive is: no slip in a name may cost its records. */
export async function refuseDatabase(file: string): Promise<void> {
  // A pipe would keep whoever opens it waiting for its other end
  const found = (await isStream(file)) ? null : await open(file, 'r').catch(() => null)
  if (found === null) return
  try {
    const { buffer, bytesRead } = await found.read(Buffer.alloc(databaseMark.length))
    if (buffer.toString('latin1', 0, bytesRead) !== databaseMark) return
  } finally {
    await found.close()
  }
  throw new Trouble(
    'conflict',
    `${file} is an archive, or another database, and is not written over.`,
    'Name another file.',
  )
}

async function replaceFile(target: string, content: string | Uint8Array): Promise<void> {
  // Not named after the file, whose name may be as long as a name can be
  const unfinished = join(dirname(target), `.${randomUUID()}.unfinished`)
  try {
    await writeFile(unfinished, content, { flush: true })
    await rename(unfinished, target)
  } catch (thrown) {
    await rm(unfinished, { force: true })
    throw thrown
  }
}

function writingTrouble(file: string, thrown: NodeJS.ErrnoException): Trouble {
  if (thrown instanceof Trouble) return thrown
  const { code, message } = thrown
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return new Trouble('invalid-input', `The folder of ${file} is not there.`, 'Make it, or name another file.')
    case 'EISDIR':
      return new Trouble('invalid-input', `${file} is a folder.`, 'Name a file in it.')
    case 'ENAMETOOLONG':
      return new Trouble('invalid-input', `The name of ${file} is too long.`, 'Give the file a shorter name.')
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return new Trouble('denied', `${file} must not be written.`, 'Name a file in a folder of your own.')
    case 'ENOSPC':
    case 'EDQUOT':
    case 'EFBIG':
      return new Trouble('disk-full', `The disk has no room for ${file}.`, 'Make room, then write it again.')
    default:
      return new Trouble('internal', `${file} could not be written: ${message}`, 'Name another file and try again.')
  }
}
