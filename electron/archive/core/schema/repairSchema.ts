import type { Database } from '../database.ts'
import { formatVersion } from '../migrate.ts'
import type { Migration } from '../migration.ts'
import { knownSchema, type SchemaDifference, type SchemaObject, schemaDifferences } from './knownSchema.ts'

/** Every text of a schema that a repair may rewrite, as the database itself holds it; no row of a record is touched. */
const writeText = 'UPDATE sqlite_schema SET sql = @sql WHERE type = @type AND name = @name AND tbl_name = @tbl_name'

/**
 * Lets a connection read a database in whose schema a text cannot be understood, and write to the schema itself. Ends with
 * `letGo`; between the two, nothing but the schema is to be written.
 */
export function takeSchema(database: Database): { letGo(): void } {
  database.unsafeMode(true)
  database.pragma('writable_schema = ON')
  return {
    letGo() {
      database.pragma('writable_schema = RESET')
      database.unsafeMode(false)
    },
  }
}

/**
 * Writes the texts that the migrations make over those that differ: triggers and views are taken away and the known triggers
 * put back; tables and indexes keep their rows and get their known text; indexes that are missing are made again. Returns what
 * differed before, and what still differs: a table that is missing, or one too many, is no matter of texts. All or nothing.
 */
export function repairSchema(
  database: Database,
  migrations: readonly Migration[],
): { mended: SchemaDifference[]; left: SchemaDifference[] } {
  const known = knownSchema(migrations, formatVersion(database))
  const schema = takeSchema(database)
  try {
    database.exec('BEGIN IMMEDIATE')
    const before = schemaDifferences(database, known)
    if (before.length > 0) writeTexts(database, known, before)
    schema.letGo()
    for (const { object, manner } of schemaDifferences(database, known)) {
      if (object.type !== 'index' || object.sql === null) continue
      if (manner === 'missing') database.exec(object.sql)
      else if (manner === 'planted') database.exec(`DROP INDEX "${object.name.replaceAll('"', '""')}"`)
    }
    if (before.length > 0) database.exec('REINDEX')
    const left = schemaDifferences(database, known)
    database.exec('COMMIT')
    const stays = new Set(left.map(({ object }) => `${object.type} ${object.name}`))
    return { mended: before.filter(({ object }) => !stays.has(`${object.type} ${object.name}`)), left }
  } catch (thrown) {
    if (database.inTransaction) database.exec('ROLLBACK')
    throw thrown
  }
}

function writeTexts(
  database: Database,
  known: readonly SchemaObject[],
  differences: readonly SchemaDifference[],
): void {
  database.exec("DELETE FROM sqlite_schema WHERE type NOT IN ('table', 'index')")
  const addTrigger = database.prepare(
    'INSERT INTO sqlite_schema (type, name, tbl_name, rootpage, sql) VALUES (@type, @name, @tbl_name, 0, @sql)',
  )
  for (const object of known) if (object.type === 'trigger') addTrigger.run(object)
  const write = database.prepare(writeText)
  for (const { object, manner } of differences) if (manner === 'damaged' && object.type !== 'trigger') write.run(object)
  // Other connections look at this number to see that they must read the schema again.
  database.pragma(`schema_version = ${Number(database.pragma('schema_version', { simple: true })) + 1}`)
}
