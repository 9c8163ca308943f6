// Held by tests/archive/catalogue/newNames.spec.ts.
import { naturalKey } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { ownerKind } from './deriveCatalogue.ts'
import type { Written } from './written.ts'

/** The entry that a name belongs to, merged or not; null: the catalogue lacks it. */
export function ownEntryOf(database: Database, written: Written): number | null {
  return findName(database, written.kind, scopeOf(database, written), written.name)
}

/** The entry of the adhesive that a lot is of, of the wood that a board is of; 0: none. */
export function scopeOf(database: Database, { kind, of }: Written): number {
  const owner = ownerKind[kind]
  return owner === undefined || of === '' ? 0 : (findName(database, owner, 0, of) ?? 0)
}

function findName(database: Database, kind: string, scope: number, name: string): number | null {
  const row = prepared<{ entry_id: number }>(
    database,
    'SELECT entry_id FROM catalogue_name WHERE kind = ? AND scope = ? AND name_key = ?',
  ).get(kind, scope, naturalKey(name))
  return row?.entry_id ?? null
}

/** An entry that others may have been merged into, and the name that it has now. */
export type Named = { readonly entryId: number; readonly name: string }

/**
 * Says which entry a name stands for in the end; null: nothing is named, or the catalogue lacks it. Each name is looked up once,
 * so keep what this gives no longer than the catalogue stays as it is.
 */
export function nameReader(database: Database): (written: Written) => Named | null {
  const known = new Map<string, Named | null>()
  return (written) => {
    if (written.name === '') return null
    const key = `${written.kind}\n${written.of}\n${written.name}`
    const before = known.get(key)
    if (before !== undefined) return before
    const found = readName(database, written)
    known.set(key, found)
    return found
  }
}

function readName(database: Database, written: Written): Named | null {
  const own = ownEntryOf(database, written)
  if (own === null) return null
  const row = prepared<Named>(
    database,
    `SELECT i.entry_id AS entryId, i.name FROM catalogue_current o
     JOIN catalogue_current i ON i.entry_id = o.into_entry_id WHERE o.entry_id = ?`,
  ).get(own)
  return row ?? null
}

/** Says which name an entry that was merged into no other has now; null: there is none. Each is looked up once, as above. */
export function entryNameReader(database: Database): (entryId: number | null) => string | null {
  const known = new Map<number, string | null>()
  return (entryId) => {
    if (entryId === null) return null
    const before = known.get(entryId)
    if (before !== undefined) return before
    const row = prepared<{ name: string }>(database, 'SELECT name FROM catalogue_current WHERE entry_id = ?').get(
      entryId,
    )
    known.set(entryId, row?.name ?? null)
    return row?.name ?? null
  }
}

/** The name that stands for what `written` says, in SQL: `entryId` is the number of an entry that was merged into no other. */
export const nameInForce = (entryId: string, written: string) =>
  `coalesce((SELECT name FROM catalogue_current WHERE entry_id = ${entryId}), ${written})`
