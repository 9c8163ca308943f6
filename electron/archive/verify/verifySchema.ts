import type { Database } from '../core/database.ts'
import type { Report } from '../core/fault.ts'
import { formatVersion } from '../core/migrate.ts'
import type { Migration } from '../core/migration.ts'
import { differenceWords, knownSchema, schemaDifferences } from '../core/schema/knownSchema.ts'
import { conditionsOf } from './conditions.ts'

const repairMends = 'the command repair can mend this'

/** Throws what SQLite says of a text of the schema that it cannot understand, with what mends it. */
export function understandSchema(database: Database): void {
  try {
    database.prepare('SELECT count(*) FROM sqlite_schema').get()
  } catch (thrown) {
    throw new RangeError(`${thrown instanceof Error ? thrown.message : String(thrown)}: ${repairMends}`)
  }
}

/** Holds every text of the schema against what the migrations make: tables, indexes, and the triggers that keep records as they are. */
export function verifySchema(database: Database, report: Report, migrations: readonly Migration[]): void {
  for (const difference of schemaDifferences(database, knownSchema(migrations, formatVersion(database))))
    report({
      where: `${difference.object.type} ${difference.object.name}`,
      what: `${differenceWords(difference)}: ${repairMends}`,
    })
}

/**
 * Finds rows that break a condition of their table. Written out here, from the texts that the migrations make, because SQLite
 * leaves conditions out of its own check where it may only read.
 */
export function verifyConditions(database: Database, report: Report, migrations: readonly Migration[]): void {
  for (const { type, name, sql } of knownSchema(migrations, formatVersion(database))) {
    const conditions = type === 'table' && sql !== null ? conditionsOf(sql) : []
    if (conditions.length === 0) continue
    const broken = conditions.map((condition) => `NOT (${condition})`)
    const rows = database
      .prepare<[], { row: number; which: number }>(
        `SELECT rowid AS row, CASE ${broken.map((one, i) => `WHEN ${one} THEN ${i}`).join(' ')} END AS which
         FROM ${name} WHERE ${broken.join(' OR ')}`,
      )
      .iterate()
    for (const { row, which } of rows)
      report({ where: `table ${name}, row ${row}`, what: `it breaks the condition ${conditions[which]}` })
  }
}
