import { Trouble, troubleFrom } from '#contract/errors.ts'
import { repairCure } from './schema/repairCure.ts'

const readOnly = (path: string) =>
  new Trouble(
    'archive-read-only',
    `The archive ${path} cannot be written.`,
    'Allow writing to the file and its folder, or copy the archive to a folder of your own and open the copy.',
  )

/** A quota and a limit of a file's size are no room either. */
const noRoom: ReadonlySet<string> = new Set([
  ...['SQLITE_FULL', 'SQLITE_IOERR_SHMOPEN', 'SQLITE_IOERR_SHMSIZE', 'SQLITE_IOERR_WRITE'],
  ...['ENOSPC', 'EDQUOT', 'EFBIG'],
])

/** Whether a disk that has no room is what stood in the way. */
export function isNoRoom(thrown: unknown): boolean {
  return thrown instanceof Error && 'code' in thrown && typeof thrown.code === 'string' && noRoom.has(thrown.code)
}

/** Turns an error of SQLite or of the file system into the trouble that a person can do something about; anything else stays what it is. */
export function databaseTrouble(thrown: unknown, path: string): unknown {
  if (thrown instanceof Trouble || !(thrown instanceof Error)) return thrown
  const code = 'code' in thrown && typeof thrown.code === 'string' ? thrown.code : ''
  if (isNoRoom(thrown))
    return new Trouble(
      'disk-full',
      `There is no room on the disk for the archive ${path}. Nothing was half-written.`,
      'Make room on that disk and try again; everything stored before is safe.',
    )
  if (code.startsWith('SQLITE_READONLY') || code === 'EACCES' || code === 'EROFS' || code === 'EPERM')
    return readOnly(path)
  if (thrown.message.startsWith('malformed database schema'))
    return new Trouble(
      'archive-damaged',
      `The archive ${path} is damaged in the text of one of its tables, indexes or triggers: ${thrown.message}.`,
      repairCure,
    )
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB' || code === 'SQLITE_FORMAT')
    return new Trouble(
      'archive-damaged',
      `The archive ${path} is damaged or is no archive: ${thrown.message}.`,
      'Open the newest backup instead, and keep the damaged file: curves can often be read from it.',
    )
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) return inUse(path)
  if (code.startsWith('SQLITE_CANTOPEN') || code === 'ENOENT' || code === 'EISDIR')
    return new Trouble(
      'archive-missing',
      `The archive ${path} cannot be opened: ${thrown.message}.`,
      'Check that the file is there, that it may be read, and that the name is right.',
    )
  return isUnfitRecord(thrown) ? unreadableRecord(path, thrown) : thrown
}

/** What comes from a person was parsed before it got here; so what does not fit its form now, or is no JSON, is a stored record. */
export function isUnfitRecord(thrown: unknown): boolean {
  return thrown instanceof SyntaxError || troubleFrom(thrown).code === 'invalid-input'
}

/** What about a record is not as it should be, on one line. */
export function unfitBecause(thrown: unknown): string {
  return troubleFrom(thrown)
    .message.replaceAll('✖ ', '')
    .replaceAll(/\s*\n\s*(→ )?/g, ' ')
}

function unreadableRecord(path: string, thrown: Error): Trouble {
  return new Trouble(
    'archive-damaged',
    `A record in the archive ${path} cannot be read: ${unfitBecause(thrown)}.`,
    'Check the archive: that names the record. Go on with the newest backup, and keep the damaged file.',
  )
}

/** What is said when another program has the archive open for writing. */
export function inUse(path: string): Trouble {
  return new Trouble(
    'archive-in-use',
    `Another program has the archive ${path} open.`,
    'Close the other program, or open a different archive. Reading it with `verify` works while it is in use.',
  )
}

/** What is said of a file that is a sound database, but not one of ours. */
export function notAnArchive(path: string, because: string): Trouble {
  return new Trouble(
    'archive-damaged',
    `The file ${path} is not an archive of this program: ${because}.`,
    'Choose another file. This one was left as it was.',
  )
}

/** What is said of a file that is known by several names, each of which would have a lock and a journal of its own. */
export function hasOtherNames(path: string, names: number): Trouble {
  return new Trouble(
    'archive-in-use',
    `The archive ${path} is one file with ${names} names (hard links); another program could write to it under another name.`,
    'Remove the other names, or make a copy and open that. Reading it with `verify` works as it is.',
  )
}

/** What is said where a new archive would be begun over the journal of one that is gone. */
export function journalAlone(path: string): Trouble {
  return new Trouble(
    'archive-missing',
    `There is no archive ${path}, but its journal ${path}-wal is there and may hold records.`,
    'Put the archive back beside its journal, or choose another name for a new archive.',
  )
}
