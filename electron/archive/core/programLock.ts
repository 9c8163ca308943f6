import Database from 'better-sqlite3'
import { inUse } from './databaseTrouble.ts'

export type ProgramLock = { release(): void }

/**
 * Takes the right to write to the archive, or throws the trouble "archive-in-use".
 *
 * The lock is an exclusive transaction on a small database file beside the archive, so the operating system lets go of it
 * when the program ends in any way, and readers of the archive itself are never kept out. The file stays behind, empty.
 */
export function takeProgramLock(archivePath: string): ProgramLock {
  const lock = new Database(`${archivePath}-lock`, { timeout: 0 })
  try {
    lock.pragma('journal_mode = MEMORY')
    lock.exec('BEGIN EXCLUSIVE')
  } catch (thrown) {
    lock.close()
    if (thrown instanceof Error && 'code' in thrown && String(thrown.code).startsWith('SQLITE_BUSY'))
      throw inUse(archivePath)
    throw thrown
  }
  return { release: () => lock.close() }
}
