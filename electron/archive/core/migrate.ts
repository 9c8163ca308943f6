import type { Database } from './database.ts'
import { formatKind } from './formatKind.ts'
import type { Migration } from './migration.ts'
import { migration as first } from './migrations/0001.ts'
import { migration as second } from './migrations/0002.ts'
import { migration as third } from './migrations/0003.ts'
import { migration as fourth } from './migrations/0004.ts'
import { migration as fifth } from './migrations/0005.ts'
import { migration as sixth } from './migrations/0006.ts'
import { migration as seventh } from './migrations/0007.ts'
import { migration as eighth } from './migrations/0008.ts'
import { migration as ninth } from './migrations/0009.ts'
import { migration as tenth } from './migrations/0010.ts'
import { migration as eleventh } from './migrations/0011.ts'
import { migration as twelfth } from './migrations/0012.ts'
import { migration as thirteenth } from './migrations/0013.ts'
import { migration as fourteenth } from './migrations/0014.ts'
import { storeRecord } from './recordKind.ts'
import { insertRow } from './recordTable.ts'
import { inTransaction } from './transaction.ts'

export const migrations: readonly Migration[] = [
  ...[first, second, third, fourth, fifth, sixth, seventh, eighth, ninth, tenth, eleventh, twelfth, thirteenth],
  fourteenth,
]

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

/** From this version on the chain vouches for the formats that an archive had. */
const formatsInChain = 5

/** Brings a database to the newest format in one transaction: all of it or nothing. */
export function migrate(database: Database, list: readonly Migration[], program: string, instant: string): void {
  checkConsecutive(list)
  const missing = list.slice(formatVersion(database))
  if (missing.length === 0) return
  inTransaction(database, () => {
    for (const migration of missing) {
      if (migration.sql !== undefined) database.exec(migration.sql)
      migration.run?.(database, instant)
      database.pragma(`user_version = ${migration.number}`)
    }
    const reached = { formatVersion: list.length, reachedAt: instant, program }
    if (list.length >= formatsInChain) storeRecord(database, formatKind, reached)
    else insertRow(database, formatKind, reached)
  })
}
