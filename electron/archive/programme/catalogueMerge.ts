// Held by tests/archive/programme/catalogue.spec.ts.
import { catalogueEntryKind } from '../catalogue/catalogueKinds.ts'
import { lastOf, mergedInto, ownerOf } from '../catalogue/deriveCatalogue.ts'
import { nameReader } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { readRecords } from '../core/recordTable.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'

/** Throws the trouble that says why two entries cannot become one. */
export function refuseMerge(database: Database, fromEntryId: number, intoEntryId: number): void {
  const [from, into] = [fromEntryId, intoEntryId].map((entryId) => {
    const versions = readRecords(database, catalogueEntryKind, 'WHERE entry_id = ? ORDER BY revision', entryId)
    if (versions.length === 0) throw notFound('catalogue entry', entryId)
    return versions.at(-1)!.fields
  }) as [Fields, Fields]
  if (from.kind !== into.kind)
    throw conflict(
      `"${from.name}" and "${into.name}" are of two kinds and cannot be one thing.`,
      'Merge entries of one kind only.',
    )
  const merges = mergedInto(database)
  if (merges.has(fromEntryId))
    throw conflict(`"${from.name}" was merged already.`, 'Take that merge back first, or merge what it became.')
  if (lastOf(intoEntryId, merges) === fromEntryId)
    throw conflict(
      `"${into.name}" counts as "${from.name}" already.`,
      fromEntryId === intoEntryId ? 'Choose another entry.' : 'Take that merge back first.',
    )
  const readName = nameReader(database)
  const adhesiveOf = (fields: Fields) => readName({ kind: 'adhesive', name: ownerOf(fields), of: '' })?.entryId
  if (from.kind === 'lot' && adhesiveOf(from) !== adhesiveOf(into))
    throw conflict(
      `"${from.name}" and "${into.name}" are lots of two adhesives.`,
      'Merge the adhesives first where they are one.',
    )
}

type Fields = ReturnType<typeof catalogueEntryKind.parse>['fields']
