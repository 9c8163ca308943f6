import { randomUUID } from 'node:crypto'
import { realpath, rename, rm, stat, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { Trouble } from '#contract/errors.ts'

/**
 * Writes a file as a whole: what stood there before stays until all is on disk. A link is followed, and a device or a pipe is
 * written to, never replaced by a file. Rejects with a Trouble that names the file.
 */
export async function writeWholeFile(file: string, content: string | Uint8Array): Promise<void> {
  try {
    const target = await realpath(file).catch(() => file)
    if (await isStream(target)) await writeFile(target, content)
    else await replaceFile(target, content)
  } catch (thrown) {
    throw writingTrouble(file, thrown as NodeJS.ErrnoException)
  }
}

async function isStream(target: string): Promise<boolean> {
  const found = await stat(target).catch(() => null)
  return found !== null && !found.isFile() && !found.isDirectory()
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

function writingTrouble(file: string, { code, message }: NodeJS.ErrnoException): Trouble {
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
