import { type CatalogueEntry, type CatalogueFields, catalogueFields } from '#contract/programme/catalogue.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { catalogueEntryKind } from './catalogueKinds.ts'
import { putNewEntry } from './catalogueRows.ts'
import { ownerKind, ownerOf } from './deriveCatalogue.ts'
import { ownEntryOf, scopeOf } from './names.ts'
import type { Written } from './written.ts'

/** The number of the version that was stored last. */
const newestRevision = 'SELECT max(revision_id) AS newest, max(entry_id) AS last FROM catalogue_revision'

type Newest = { newest: number | null; last: number | null }

/** Stores the first version of an entry, with what it belongs to where that is not known yet. Call it inside a transaction. */
export function storeNewEntry(
  database: Database,
  fields: CatalogueFields,
  recordedAt: string,
  by: string,
  reason: string,
): CatalogueEntry {
  nameOwner(database, writtenAs(fields), recordedAt, by)
  const { last } = prepared<Newest>(database, newestRevision).get()!
  const entryId = (last ?? 0) + 1
  const entry = storeRecord(database, catalogueEntryKind, { entryId, revision: 1, recordedAt, by, reason, fields })
  const { newest } = prepared<Newest>(database, newestRevision).get()!
  putNewEntry(database, newest!, entry, scopeOf(database, writtenAs(fields)))
  return entry
}

/** The name by which records call an entry with such fields. */
export function writtenAs(fields: CatalogueFields): Written {
  return { kind: fields.kind, name: fields.name, of: ownerOf(fields) }
}

const named = 'named in a record'

/**
 * Gives every name that the catalogue lacks an entry of its own. Call it inside the transaction that stores what names them;
 * an empty name is none.
 */
export function nameNew(database: Database, names: Iterable<Written>, recordedAt: string, by: string): void {
  for (const written of names) {
    if (naturalKey(written.name) === '') continue
    nameOwner(database, written, recordedAt, by)
    const fields = ownEntryOf(database, written) === null ? bareFields(written) : null
    if (fields !== null) storeNewEntry(database, fields, recordedAt, by, named)
  }
}

/** The adhesive of a lot is in the catalogue before it, and so is the wood of a board. */
export function nameOwner(database: Database, { kind, of }: Written, recordedAt: string, by: string): void {
  const owner = ownerKind[kind]
  if (owner !== undefined && of !== '') nameNew(database, [{ kind: owner, name: of, of: '' }], recordedAt, by)
}

/** null: the name is longer than one may be, from a program that took longer ones. */
function bareFields({ kind, name, of }: Written): CatalogueFields | null {
  const owner = kind === 'lot' ? { adhesive: of } : kind === 'board' ? { wood: of } : {}
  return catalogueFields.safeParse({ kind, name, ...owner }).data ?? null
}
