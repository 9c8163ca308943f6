// Held by tests/archive/verify/verifySchema.spec.ts.
import BetterSqlite from 'better-sqlite3'
import { Trouble } from '#contract/errors.ts'
import type { Database } from '../database.ts'
import { migrate } from '../migrate.ts'
import type { Migration } from '../migration.ts'
import { repairCure } from './repairCure.ts'

/** A table, index, trigger or view as the database lists it; `sql` is NULL for the indexes that SQLite makes by itself. */
export type SchemaObject = { type: string; name: string; tbl_name: string; sql: string | null }

/** How an object of the schema differs from what the migrations make. */
export type SchemaDifference = { object: SchemaObject; manner: 'damaged' | 'missing' | 'planted' }

/** Every object of a schema but SQLite's own tables, which hold nothing of ours. */
export function schemaOf(database: Database): SchemaObject[] {
  return database
    .prepare<[], SchemaObject>('SELECT type, name, tbl_name, sql FROM sqlite_schema ORDER BY type, name')
    .all()
    .filter(({ type, name }) => !(type === 'table' && /^sqlite_(sequence|stat\d)$/.test(name)))
}

const made = new WeakMap<readonly Migration[], Map<number, readonly SchemaObject[]>>()

/** The schema that the first `version` of the migrations make, from an empty database; made once. */
export function knownSchema(migrations: readonly Migration[], version: number): readonly SchemaObject[] {
  const byVersion = made.get(migrations) ?? new Map<number, readonly SchemaObject[]>()
  made.set(migrations, byVersion)
  const known = byVersion.get(version)
  if (known !== undefined) return known
  const database = new BetterSqlite(':memory:')
  try {
    migrate(database, migrations.slice(0, version), 'none', new Date(0).toISOString())
    const schema = schemaOf(database)
    byVersion.set(version, schema)
    return schema
  } finally {
    database.close()
  }
}

/**
 * What of a schema is not as the migrations make it. Only white space and the quotes around names may differ: versions of
 * SQLite write them differently where a table is renamed.
 */
export function schemaDifferences(database: Database, known: readonly SchemaObject[]): SchemaDifference[] {
  // As JSON, so that neither a space nor a blob in place of a text makes one place look like another.
  const place = ({ type, name, tbl_name }: SchemaObject) => JSON.stringify([type, name, tbl_name])
  const there = schemaOf(database)
  const byPlace = new Map(there.map((object) => [place(object), object]))
  const differences: SchemaDifference[] = []
  for (const object of known) {
    const found = byPlace.get(place(object))
    if (found === undefined) differences.push({ object, manner: 'missing' })
    else if (normal(found.sql) !== normal(object.sql)) differences.push({ object, manner: 'damaged' })
  }
  const places = new Set(known.map(place))
  for (const object of there) if (!places.has(place(object))) differences.push({ object, manner: 'planted' })
  return differences
}

function normal(sql: string | null): string | null {
  return sql === null ? null : sql.replaceAll(/"([a-z_0-9]+)"/g, '$1').replaceAll(/\s+/g, ' ')
}

const manners = {
  damaged: 'its text is not the one that the program wrote',
  missing: 'it is missing',
  planted: 'the program did not make it',
} as const

/** What is said of a difference, after the name of what differs. */
export function differenceWords({ manner }: SchemaDifference): string {
  return manners[manner]
}

/** Throws the trouble "archive-damaged", with its cure, when a schema is not as the migrations make it. */
export function refuseOtherSchema(database: Database, path: string, known: readonly SchemaObject[]): void {
  const [first, ...others] = schemaDifferences(database, known)
  if (first === undefined) return
  const more = others.length === 0 ? '' : ` (and ${others.length} more)`
  throw new Trouble(
    'archive-damaged',
    `The archive ${path} is not built as the program builds it. ${first.object.type} ${first.object.name}: ${differenceWords(first)}${more}.`,
    repairCure,
  )
}
