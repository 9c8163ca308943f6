import type { CatalogueEntry, CatalogueFields } from '#contract/programme/catalogue.ts'
import type { Signature } from '#contract/signature.ts'
import { catalogueDecisionKind, catalogueEntryKind } from '../catalogue/catalogueKinds.ts'
import { remakeCatalogue } from '../catalogue/catalogueRows.ts'
import { lastOf, mergedInto } from '../catalogue/deriveCatalogue.ts'
import { ownEntryOf } from '../catalogue/names.ts'
import { nameOwner, storeNewEntry, writtenAs } from '../catalogue/newNames.ts'
import type { Database } from '../core/database.ts'
import { storeRecord } from '../core/recordKind.ts'
import { readRecords } from '../core/recordTable.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { inTransaction } from '../core/transaction.ts'
import { refreshNamed } from '../lists/refreshNamed.ts'
import { refuseMerge } from './catalogueMerge.ts'

/** Every version of an entry, newest last. Throws the trouble "not-found" when there is none. */
export function entryVersions(database: Database, entryId: number): CatalogueEntry[] {
  const versions = readRecords(database, catalogueEntryKind, 'WHERE entry_id = ? ORDER BY revision', entryId)
  if (versions.length === 0) throw notFound('catalogue entry', entryId)
  return versions
}

function refuseTakenName(database: Database, fields: CatalogueFields, entryId: number | null): void {
  const taken = ownEntryOf(database, writtenAs(fields))
  if (taken === null || taken === entryId) return
  throw conflict(
    `The catalogue has "${fields.name}" already, or had it under that name.`,
    'Choose another name, or merge the two entries where they are one thing.',
  )
}

/** Adds an entry. Throws the trouble "conflict" when the catalogue has that name already. */
export function addCatalogueEntry(
  database: Database,
  fields: CatalogueFields,
  recordedAt: string,
  by: string,
): CatalogueEntry {
  return inTransaction(database, () => {
    refuseTakenName(database, fields, null)
    return storeNewEntry(database, fields, recordedAt, by, '')
  })
}

/** Lays a corrected version over the older ones, which stay; the names before go on naming the entry. */
export function correctCatalogueEntry(
  database: Database,
  entryId: number,
  fields: CatalogueFields,
  recordedAt: string,
  { by, reason }: Signature,
): CatalogueEntry {
  return inTransaction(database, () => {
    const versions = entryVersions(database, entryId)
    if (versions.at(-1)!.fields.kind !== fields.kind)
      throw conflict('An entry stays of the kind that it is.', 'Add an entry of the other kind.')
    refuseTakenName(database, fields, entryId)
    nameOwner(database, writtenAs(fields), recordedAt, by)
    const revision = versions.length + 1
    const stored = storeRecord(database, catalogueEntryKind, { entryId, revision, recordedAt, by, reason, fields })
    remakeCatalogue(database)
    refreshNamed(database, [lastOf(entryId, mergedInto(database))])
    return stored
  })
}

/** Decides that two entries are one thing: what names the first counts as naming the second. Nothing is rewritten. */
export function mergeCatalogueEntries(
  database: Database,
  fromEntryId: number,
  intoEntryId: number,
  recordedAt: string,
  { by, reason }: Signature,
): void {
  inTransaction(database, () => {
    refuseMerge(database, fromEntryId, intoEntryId)
    const decision = { recordedAt, by, reason, kind: 'merged', fromEntryId, intoEntryId } as const
    storeRecord(database, catalogueDecisionKind, decision)
    remakeCatalogue(database)
    refreshNamed(database, [fromEntryId, lastOf(intoEntryId, mergedInto(database))])
  })
}

/** Takes the merge of an entry back: its names are its own again. Throws the trouble "conflict" when it was not merged. */
export function takeBackCatalogueMerge(
  database: Database,
  fromEntryId: number,
  recordedAt: string,
  { by, reason }: Signature,
): void {
  inTransaction(database, () => {
    const before = mergedInto(database)
    const intoEntryId = before.get(fromEntryId)
    if (intoEntryId === undefined)
      throw conflict('This entry was not merged into another.', 'There is nothing to take back.')
    const decision = { recordedAt, by, reason, kind: 'taken-back', fromEntryId, intoEntryId } as const
    storeRecord(database, catalogueDecisionKind, decision)
    remakeCatalogue(database)
    refreshNamed(database, [lastOf(intoEntryId, before)])
  })
}
