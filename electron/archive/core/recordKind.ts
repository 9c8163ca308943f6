import type { Topic } from '#contract/topics.ts'
import type { Database } from './database.ts'
import { appendLedger } from './ledger.ts'
import {
  type DeclaredTable,
  type Identity,
  insertRow,
  type New,
  type RecordTable,
  readContent,
  recordTable,
} from './recordTable.ts'
import { touch } from './touched.ts'

/** What the ledger and `verify` need of a kind of record. */
export type LedgeredKind = {
  /** What the ledger calls it. */
  readonly name: string
  /** Selects, as `id`, the numbers of all records that must stand in the ledger. */
  readonly ids: string
  /** What the ledger holds of a record: just what is stored. Throws the trouble "not-found" when there is none. */
  content(database: Database, id: number): unknown
  /** Throws where what is stored is not what the program reads as such a record. */
  check(content: unknown): void
}

/** A kind of record: a table, and an entry in the ledger for each of its rows. */
export type RecordKind<Stored = unknown, New = never> = RecordTable<Stored, New> &
  LedgeredKind & {
    instantOf(record: New): string
    topicsOf(record: Stored): readonly Topic[]
  }

type DeclaredKind<Stored, Input, Key extends string, By extends Identity['by']> = DeclaredTable<
  Stored,
  Input,
  Key,
  By
> & {
  readonly name: string
  /** The key of the moment at which it was recorded. */
  readonly instant: keyof Omit<Stored, Key> & keyof Omit<Input, Key> & string
  /** What a new record touches; what follows from it in derived rows is told where those are brought up to date. */
  topics?(record: Stored): readonly Topic[]
}

/** Declares a kind of record; how it is stored, read, entered in the ledger and verified follows from the declaration. */
export function recordKind<Stored extends object, Input extends object, Key extends string, By extends Identity['by']>(
  declared: DeclaredKind<Stored, Input, Key, By>,
): RecordKind<Stored, New<Input, Key, By>> {
  const table = recordTable(declared)
  return {
    ...table,
    name: declared.name,
    ids: table.texts.ids,
    content: (database, id) => readContent(database, table, id),
    check: (content) => void table.parse(content),
    instantOf: (record) => String((record as Record<string, unknown>)[declared.instant]),
    topicsOf: declared.topics ?? (() => []),
  }
}

/**
 * Stores a record and enters it in the ledger, with what it touches noted; returns it as it will be read. Call it inside a
 * transaction: a record that could not be read back throws the trouble "invalid-input", and nothing of it is to stay.
 */
export function storeRecord<Stored, New>(database: Database, kind: RecordKind<Stored, New>, record: New): Stored {
  const { id, content, stored } = insertRow(database, kind, record)
  appendLedger(database, kind.name, id, kind.instantOf(record), content)
  touch(database, ...kind.topicsOf(stored))
  return stored
}
