import type { CatalogueFields, CatalogueKind } from '#contract/programme/catalogue.ts'
import { folded, naturalKey } from '#domain/text/naturalOrder.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/** An entry as it stands: its newest version, and the entry that it counts as. */
export type CatalogueCurrentRow = {
  entry_id: number
  revision_id: number
  kind: CatalogueKind
  name: string
  name_key: string
  /** All names that it ever had, as searches compare them, one a line. */
  search: string
  /** What it was merged into, in the end; itself where it was not. */
  into_entry_id: number
}

/** A name that an entry has or had. `scope`: the entry of the adhesive that a lot is of, of the wood that a board is of; 0: none. */
export type CatalogueNameRow = { kind: CatalogueKind; scope: number; name_key: string; entry_id: number }

export type DerivedCatalogue = { current: CatalogueCurrentRow[]; names: CatalogueNameRow[] }

type RevisionRow = { revision_id: number; entry_id: number; fields: string }
type Version = Omit<RevisionRow, 'fields'> & { fields: CatalogueFields }

/** What the entry belongs to, by name; '': nothing. */
export function ownerOf(fields: CatalogueFields): string {
  if (fields.kind === 'lot') return fields.adhesive
  return fields.kind === 'board' ? (fields.wood ?? '') : ''
}

/** The kind of what lots and boards belong to. */
export const ownerKind: Partial<Record<CatalogueKind, CatalogueKind>> = { lot: 'adhesive', board: 'wood' }

/** What the records say of the catalogue now, each list in the order of its keys. */
export function deriveCatalogue(database: Database): DerivedCatalogue {
  const versions = prepared<RevisionRow>(
    database,
    'SELECT revision_id, entry_id, fields FROM catalogue_revision ORDER BY revision_id',
  )
    .all()
    .map((row): Version => ({ ...row, fields: JSON.parse(row.fields) }))
  return { current: currentOf(versions, mergedInto(database)), names: namesOf(versions) }
}

function namesOf(versions: readonly Version[]): CatalogueNameRow[] {
  const known = new Map<string, CatalogueNameRow>()
  const put = ({ entry_id, fields }: Version, scope: number) => {
    const row = { kind: fields.kind, scope, name_key: naturalKey(fields.name), entry_id }
    const key = nameKey(row)
    if (!known.has(key)) known.set(key, row)
  }
  const owned = ({ fields }: Version) => ownerKind[fields.kind] !== undefined
  for (const version of versions) if (!owned(version)) put(version, 0)
  for (const version of versions.filter(owned)) {
    const kind = ownerKind[version.fields.kind]!
    const owner = { kind, scope: 0, name_key: naturalKey(ownerOf(version.fields)) }
    put(version, known.get(nameKey(owner))?.entry_id ?? 0)
  }
  return [...known.values()].sort((a, b) => (nameKey(a) < nameKey(b) ? -1 : 1))
}

const nameKey = ({ kind, scope, name_key }: Omit<CatalogueNameRow, 'entry_id'>) =>
  JSON.stringify([kind, scope, name_key])

function currentOf(versions: readonly Version[], into: ReadonlyMap<number, number>): CatalogueCurrentRow[] {
  const rows = new Map<number, CatalogueCurrentRow>()
  for (const { entry_id, revision_id, fields } of versions) {
    const before = rows.get(entry_id)
    const names = new Set(before === undefined ? [] : before.search.split('\n'))
    rows.set(entry_id, {
      entry_id,
      revision_id,
      kind: fields.kind,
      name: fields.name,
      name_key: naturalKey(fields.name),
      search: [...names.add(folded(fields.name))].join('\n'),
      into_entry_id: lastOf(entry_id, into),
    })
  }
  return [...rows.values()].sort((a, b) => a.entry_id - b.entry_id)
}

/** Which entry each merged one was merged into, by the newest decision on it. */
export function mergedInto(database: Database): Map<number, number> {
  const rows = prepared<{ kind: string; from_entry_id: number; into_entry_id: number }>(
    database,
    'SELECT kind, from_entry_id, into_entry_id FROM catalogue_decision ORDER BY catalogue_decision_id',
  ).all()
  const into = new Map<number, number>()
  for (const { kind, from_entry_id, into_entry_id } of rows)
    if (kind === 'merged') into.set(from_entry_id, into_entry_id)
    else into.delete(from_entry_id)
  return into
}

/** The entry at the end of a line of merges. A ring, which nobody can decide, ends where it closes. */
export function lastOf(entryId: number, into: ReadonlyMap<number, number>): number {
  const seen = new Set([entryId])
  let last = entryId
  for (let next = into.get(last); next !== undefined && !seen.has(next); next = into.get(last)) {
    seen.add(next)
    last = next
  }
  return last
}
