import type { Database } from './database.ts'

/** Does all of `work` or nothing, with the right to write taken before its first look; inside another transaction it is a part of that. */
export function inTransaction<Result>(database: Database, work: () => Result): Result {
  return database.transaction(work).immediate()
}
