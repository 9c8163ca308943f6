import { close, fsync, open } from 'node:fs'
import type { Database } from './database.ts'

/** Does all of `work` or nothing, with the right to write taken before its first look; inside another transaction it is a part of that. */
export function inTransaction<Result>(database: Database, work: () => Result): Result {
  return database.transaction(work).immediate()
}

/** SQLite's own measure: at so many pages of the journal a commit brings them into the file itself. */
const pagesOfJournal = 1000

/**
 * A transaction whose commit survives the end of the program in any way when this returns, but is not held up until the disk
 * has it: a disk that takes half a second to sync would keep the samples that come meanwhile in memory alone, and they would go
 * with the program. The sync is begun at once beside it; the next commit of another kind waits for all of it. Inside another
 * transaction it is a part of that.
 */
export function inTransactionSyncedLater<Result>(database: Database, work: () => Result): Result {
  if (database.inTransaction) return inTransaction(database, work)
  database.pragma('synchronous = NORMAL')
  // Bringing the journal into the file waits for the disk too, and can wait for the end of the capture.
  database.pragma('wal_autocheckpoint = 0')
  try {
    return inTransaction(database, work)
  } finally {
    database.pragma(`wal_autocheckpoint = ${pagesOfJournal}`)
    database.pragma('synchronous = FULL')
    if (!database.memory) syncJournal(database)
  }
}

const running = new WeakMap<Database, { again: boolean }>()

/** One at a time; what came while one ran is covered by one more after it. */
function syncJournal(database: Database): void {
  const before = running.get(database)
  if (before !== undefined) {
    before.again = true
    return
  }
  const sync = { again: false }
  running.set(database, sync)
  const done = () => {
    running.delete(database)
    if (sync.again) syncJournal(database)
  }
  open(`${database.name}-wal`, 'r+', (missing, file) => {
    // The archive was closed: then all of it is in the file itself.
    if (missing !== null) return done()
    // A disk that fails here fails the next commit that waits for it, and that one tells.
    fsync(file, () => close(file, done))
  })
}
