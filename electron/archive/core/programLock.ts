import { existsSync, rmSync, statSync } from 'node:fs'
import Database from 'better-sqlite3'
import { inUse } from './databaseTrouble.ts'
import { makeFile, writersOf } from './ownedFile.ts'

export type ProgramLock = { release(): void }

/** Others may take the file away between two looks, but not again and again. */
const mostTries = 5

/**
 * Takes the right to write to the archive, or throws the trouble "archive-in-use".
 *
 * The lock is the reserved lock of a small, empty database file beside the archive: the operating system lets go of it when
 * the program ends in any way, and no reader, of the archive or of that file, is in its way. Only who may write to the archive
 * may open it. It goes away when the lock is released; where a program was killed it stays, and means nothing.
 */
export function takeProgramLock(archivePath: string): ProgramLock {
  const path = `${archivePath}-lock`
  for (let attempt = 1; attempt <= mostTries; attempt++) {
    if (!existsSync(path)) makeFile(path, writersOf(archivePath))
    const before = statSync(path, { bigint: true, throwIfNoEntry: false })
    const lock = locked(path, archivePath)
    const now = statSync(path, { bigint: true, throwIfNoEntry: false })
    // A lock on a file that was taken away keeps nobody out.
    if (before !== undefined && before.ino === now?.ino && before.dev === now.dev)
      return { release: () => release(lock, path) }
    lock.close()
  }
  throw inUse(archivePath)
}

function locked(path: string, archivePath: string): Database.Database {
  const lock = new Database(path, { timeout: 0 })
  try {
    lock.pragma('journal_mode = MEMORY')
    lock.exec('BEGIN IMMEDIATE')
    return lock
  } catch (thrown) {
    lock.close()
    if (thrown instanceof Error && 'code' in thrown && String(thrown.code).startsWith('SQLITE_BUSY'))
      throw inUse(archivePath)
    throw thrown
  }
}

/** Gone before it is let go of, so that nobody locks a file that is about to go; Windows removes no file that is open. */
function release(lock: Database.Database, path: string): void {
  const removed = removeQuietly(path)
  lock.close()
  if (!removed) removeQuietly(path)
}

function removeQuietly(path: string): boolean {
  try {
    rmSync(path, { force: true })
    return true
  } catch {
    // Another program has opened it by now, or the folder can no longer be written: it stays, and does no harm.
    return false
  }
}
