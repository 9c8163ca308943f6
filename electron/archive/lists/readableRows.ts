import { Trouble } from '#contract/errors.ts'
import type { UnreadableRecord } from '#contract/keeping/unreadable.ts'
import type { Database } from '../core/database.ts'
import { isUnfitRecord, unfitBecause } from '../core/databaseTrouble.ts'
import { prepared } from '../core/prepared.ts'
import { type RecordTable, readRecord } from '../core/recordTable.ts'

export type ReadableRows<Row> = { rows: Row[]; unreadable?: UnreadableRecord[] }

/**
 * Reads some records by their numbers, each by itself, so that one that is not as its schema says hides no other; those are
 * named. Whatever else goes wrong is thrown.
 */
export function readableRows<Row>(noun: string, ids: readonly number[], read: (id: number) => Row): ReadableRows<Row> {
  const rows: Row[] = []
  const unreadable: UnreadableRecord[] = []
  for (const id of ids)
    try {
      rows.push(read(id))
    } catch (thrown) {
      if (!isDamage(thrown)) throw thrown
      unreadable.push({ record: `${noun} ${id}`, because: unfitBecause(thrown) })
    }
  return unreadable.length === 0 ? { rows } : { rows, unreadable }
}

/** The same of one table, in the order of a query; `rest` is what follows FROM, with a place for each of `values`. */
export function readableRecords<Stored>(
  database: Database,
  table: RecordTable<Stored>,
  rest: string,
  ...values: readonly (number | string | null)[]
): ReadableRows<Stored> {
  const ids = prepared<{ id: number }>(database, `${table.texts.ids} ${rest}`)
    .all(...values)
    .map((row) => row.id)
  return readableRows(table.noun, ids, (id) => readRecord(database, table, id))
}

/** Something of the record does not fit, no figure can be made of it, or what it names is gone. */
function isDamage(thrown: unknown): boolean {
  return (
    thrown instanceof RangeError || isUnfitRecord(thrown) || (thrown instanceof Trouble && thrown.code === 'not-found')
  )
}
