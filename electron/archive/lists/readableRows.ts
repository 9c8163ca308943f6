import { Trouble } from '#contract/errors.ts'
import type { UnreadableRecord } from '#contract/keeping/unreadable.ts'
import { isUnfitRecord, unfitBecause } from '../core/databaseTrouble.ts'

export type ReadableRows<Row> = { rows: Row[]; unreadable?: UnreadableRecord[] }

/**
 * Reads some records by their numbers, each by itself, so that one that is not as its schema says hides no other; those are
 * named. Whatever else goes wrong is thrown.
 */
export function readableRows<Row>(
  noun: string,
  ids: readonly number[],
  read: (id: number) => unknown,
  schema: { parse(value: unknown): Row },
): ReadableRows<Row> {
  const rows: Row[] = []
  const unreadable: UnreadableRecord[] = []
  for (const id of ids)
    try {
      rows.push(schema.parse(read(id)))
    } catch (thrown) {
      if (!isDamage(thrown)) throw thrown
      unreadable.push({ record: `${noun} ${id}`, because: unfitBecause(thrown) })
    }
  return unreadable.length === 0 ? { rows } : { rows, unreadable }
}

/** Something of the record does not fit, no figure can be made of it, or what it names is gone. */
function isDamage(thrown: unknown): boolean {
  return (
    thrown instanceof RangeError || isUnfitRecord(thrown) || (thrown instanceof Trouble && thrown.code === 'not-found')
  )
}
