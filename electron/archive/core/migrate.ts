import type { Database } from './database.ts'
import type { Migration } from './migration.ts'
import { migration as first } from './migrations/0001.ts'
import { migration as second } from './migrations/0002.ts'
import { migration as third } from './migrations/0003.ts'
import { migration as fourth } from './migrations/0004.ts'
import { inTransaction } from './transaction.ts'

export const migrations: readonly Migration[] = [first, second, third, fourth]

/** Throws RangeError unless the numbers are 1, 2, 3, ... */
export function checkConsecutive(list: readonly Migration[]): void {
  list.forEach((migration, i) => {
    if (migration.number !== i + 1)
      throw new RangeError(`migration ${i + 1} in the list has number ${migration.number}: numbers must be consecutive`)
  })
}

/** The format version a database has: the number of its last migration, 0 for an empty file. */
export function formatVersion(database: Database): number {
  return Number(database.pragma('user_version', { simple: true }))
}

/** Brings a database to the newest format in one transaction: all of it or nothing. */
export function migrate(database: Database, list: readonly Migration[], program: string, instant: string): void {
  checkConsecutive(list)
  inTransaction(database, () => {
    for (const migration of list.slice(formatVersion(database))) {
      if (migration.sql !== undefined) database.exec(migration.sql)
      migration.run?.(database)
      database.pragma(`user_version = ${migration.number}`)
      database
        .prepare('INSERT INTO format_history (format_version, reached_at, program) VALUES (?, ?, ?)')
        .run(migration.number, instant, program)
    }
  })
}
