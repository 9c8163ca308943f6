import { randomUUID } from 'node:crypto'
import { rename, rm, writeFile } from 'node:fs/promises'
import { Trouble } from '#contract/errors.ts'

/** Writes a file as a whole: what stood there before stays until all is on disk. Rejects with a Trouble that names the file. */
export async function writeWholeFile(file: string, content: string | Uint8Array): Promise<void> {
  const unfinished = `${file}.${randomUUID()}.unfinished`
  try {
    await writeFile(unfinished, content, { flush: true })
    await rename(unfinished, file)
  } catch (thrown) {
    await rm(unfinished, { force: true })
    throw writingTrouble(file, thrown as NodeJS.ErrnoException)
  }
}

function writingTrouble(file: string, { code, message }: NodeJS.ErrnoException): Trouble {
  switch (code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return new Trouble('invalid-input', `The folder of ${file} is not there.`, 'Make it, or name another file.')
    case 'EISDIR':
      return new Trouble('invalid-input', `${file} is a folder.`, 'Name a file in it.')
    case 'EACCES':
    case 'EPERM':
    case 'EROFS':
      return new Trouble('denied', `${file} must not be written.`, 'Name a file in a folder of your own.')
    case 'ENOSPC':
      return new Trouble('disk-full', `The disk has no room for ${file}.`, 'Make room, then write it again.')
    default:
      return new Trouble('internal', `${file} could not be written: ${message}`, 'Name another file and try again.')
  }
}
