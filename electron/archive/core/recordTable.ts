import { correctTheValue, Trouble, troubleFrom } from '#contract/errors.ts'
import { type ColumnsOf, contentOf, type Place, placesOf, type Row, rowOf, snakeCase } from './columns.ts'
import type { Database } from './database.ts'
import { prepared } from './prepared.ts'
import { notFound } from './recordTrouble.ts'

type Numbering = 'archive' | 'record'

/** Which number a record is known by. */
export type Identity<Key extends string = string, By extends Numbering = Numbering> = {
  readonly key: Key
  /** Who gives the number: the archive, or the record itself, which has that of its owner. */
  readonly by: By
  /** Whether it is a part of the record. */
  readonly inRecord: boolean
}

/** The archive gives the next number. */
export const numbered = <Key extends string>(key: Key): Identity<Key, 'archive'> => ({
  key,
  by: 'archive',
  inRecord: true,
})
/** The archive gives the next number, and nobody but the ledger knows the record by it. */
export const numberedApart = <Key extends string>(key: Key): Identity<Key, 'archive'> => ({
  key,
  by: 'archive',
  inRecord: false,
})
/** The record has the number of what it belongs to, and is the only one that belongs to it. */
export const ofItsOwner = <Key extends string>(key: Key): Identity<Key, 'record'> => ({
  key,
  by: 'record',
  inRecord: true,
})

/** What is needed of a schema of the contract. */
type Schema<Stored, Input> = {
  parse(value: unknown): Stored
  readonly '~standard': { readonly types?: { readonly input: Input } | undefined }
}

export type DeclaredTable<Stored, Input, Key extends string, By extends Numbering> = {
  readonly table: string
  /** What people call it: "There is no break 7 in this archive." */
  readonly noun: string
  readonly identity: Identity<Key, By>
  readonly schema: Schema<Stored, Input>
  readonly columns: ColumnsOf<Omit<Stored, Key>>
}

/** A record before the archive has given it its number. */
export type New<Input, Key extends string, By extends Numbering> = By extends 'record' ? Input : Omit<Input, Key>

/** A table of records: how one gets in and out. `New` is what is given to be stored, `Stored` what is read. */
export type RecordTable<Stored = unknown, New = never> = {
  readonly noun: string
  /** The column of its number. */
  readonly id: string
  readonly texts: { readonly insert: string; readonly select: string; readonly byId: string; readonly ids: string }
  valuesOf(record: New): Row
  /** Just what is stored. */
  contentOf(row: Row): Record<string, unknown>
  parse(content: unknown): Stored
}

/** Declares a table of records; its texts and both mappings follow from the declaration. */
export function recordTable<Stored extends object, Input extends object, Key extends string, By extends Numbering>(
  declared: DeclaredTable<Stored, Input, Key, By>,
): RecordTable<Stored, New<Input, Key, By>> {
  const { table, noun, identity, schema, columns } = declared
  const id = snakeCase(identity.key)
  const idPlace: Place = { coding: 'plain', name: id, path: [identity.key] }
  const ofRecord = placesOf(columns)
  const written = identity.by === 'record' ? [idPlace, ...ofRecord] : ofRecord
  const read = identity.inRecord ? [idPlace, ...ofRecord] : ofRecord
  const names = written.map(({ name }) => name)
  const all = [...new Set([id, ...names])].join(', ')
  const select = `SELECT ${all} FROM ${table}`
  return {
    noun,
    id,
    texts: {
      insert: `INSERT INTO ${table} (${names.join(', ')}) VALUES (${names.map((name) => `@${name}`).join(', ')})
        RETURNING ${all}`,
      select,
      byId: `${select} WHERE ${id} = ?`,
      ids: `SELECT ${id} AS id FROM ${table}`,
    },
    valuesOf: (record) => rowOf(written, record),
    contentOf: (row) => contentOf(read, row),
    parse: (content) => schema.parse(content),
  }
}

/**
 * Stores a row; returns its number, just what is stored, and the record as it will be read. Call it inside a transaction: what
 * could not be read back throws the trouble "invalid-input", and nothing of it is to stay.
 */
export function insertRow<Stored, New>(
  database: Database,
  table: RecordTable<Stored, New>,
  record: New,
): { id: number; content: Record<string, unknown>; stored: Stored } {
  const row = prepared<Row>(database, table.texts.insert).get(table.valuesOf(record))!
  const [id, content] = [Number(row[table.id]), table.contentOf(row)]
  try {
    return { id, content, stored: table.parse(content) }
  } catch (thrown) {
    throw new Trouble(
      'invalid-input',
      `The ${table.noun} could not be read back: ${troubleFrom(thrown).message}`,
      `Nothing was stored. ${correctTheValue}`,
    )
  }
}

/** What is stored under a number, with no default added. Throws the trouble "not-found" when there is none. */
export function readContent(database: Database, table: RecordTable, id: number): Record<string, unknown> {
  const row = prepared<Row>(database, table.texts.byId).get(id)
  if (row === undefined) throw notFound(table.noun, id)
  return table.contentOf(row)
}

/** The record of a number. Throws the trouble "not-found" when there is none. */
export function readRecord<Stored>(database: Database, table: RecordTable<Stored>, id: number): Stored {
  return table.parse(readContent(database, table, id))
}

/** The record of a number; null: there is none. */
export function findRecord<Stored>(database: Database, table: RecordTable<Stored>, id: number): Stored | null {
  const row = prepared<Row>(database, table.texts.byId).get(id)
  return row === undefined ? null : table.parse(table.contentOf(row))
}

/** Records in the order of a query; `rest` is what follows FROM, with a place for each of `values`. */
export function readRecords<Stored>(
  database: Database,
  table: RecordTable<Stored>,
  rest: string,
  ...values: readonly (number | string | null)[]
): Stored[] {
  return prepared<Row>(database, `${table.texts.select} ${rest}`)
    .all(...values)
    .map((row) => table.parse(table.contentOf(row)))
}
