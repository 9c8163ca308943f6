// Held by tests/archive/core/schema/repairFile.spec.ts.
import type { Database } from '../database.ts'
import { formatVersion } from '../migrate.ts'
import type { Migration } from '../migration.ts'
import { knownSchema, type SchemaDifference, type SchemaObject, schemaDifferences } from './knownSchema.ts'
import { noteSchemaChange, takeSchema } from './takeSchema.ts'

/** Every text of a schema that a repair may rewrite, as the database itself holds it; no row of a record is touched. */
const writeText = 'UPDATE sqlite_schema SET sql = @sql WHERE type = @type AND name = @name AND tbl_name = @tbl_name'

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
  restorePlaces(database, known, differences)
  // Only what holds no rows: a table that is not ours, or that cannot be told, stays with what is in it.
  database.exec("DELETE FROM sqlite_schema WHERE type NOT IN ('table', 'index') AND coalesce(rootpage, 0) = 0")
  const addTrigger = database.prepare(
    'INSERT INTO sqlite_schema (type, name, tbl_name, rootpage, sql) VALUES (@type, @name, @tbl_name, 0, @sql)',
  )
  for (const object of known) if (object.type === 'trigger') addTrigger.run(object)
  const write = database.prepare(writeText)
  for (const { object, manner } of differences) if (manner === 'damaged' && object.type !== 'trigger') write.run(object)
  noteSchemaChange(database)
}

/**
 * Gives tables and indexes whose type or name is damaged their own again; they are known by what is whole of them, name or text.
 */
function restorePlaces(
  database: Database,
  known: readonly SchemaObject[],
  differences: readonly SchemaDifference[],
): void {
  const missing = differences.filter(({ manner }) => manner === 'missing').map(({ object }) => object)
  const strangers = database
    .prepare<[], SchemaObject & { row: number }>('SELECT rowid AS row, * FROM sqlite_schema WHERE rootpage > 0')
    .all()
    .filter((there) => !known.some((object) => isAt(object, there)))
  const restore = database.prepare(
    'UPDATE sqlite_schema SET type = @type, name = @name, tbl_name = @tbl_name WHERE rowid = @row',
  )
  for (const object of missing) {
    const found = strangers.filter(
      ({ name, sql }) => String(name) === object.name || (sql !== null && sql === object.sql),
    )
    if (found.length === 1) restore.run({ ...object, row: found[0]!.row })
  }
}

function isAt(object: SchemaObject, there: SchemaObject): boolean {
  return object.type === there.type && object.name === there.name && object.tbl_name === there.tbl_name
}
