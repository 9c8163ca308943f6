import type { CatalogueKind } from '#contract/programme/catalogue.ts'
import { catalogueKind } from '#contract/programme/catalogue.ts'
import type {
  CatalogueChoice,
  CatalogueRecord,
  CatalogueRow,
  LikeNames,
} from '#contract/programme/catalogueProcedures.ts'
import { type AlikePair, alikeNames } from '#domain/programme/catalogue/alike.ts'
import { naturalKey } from '#domain/text/naturalOrder.ts'
import { catalogueDecisionKind } from '../catalogue/catalogueKinds.ts'
import { ownerOf } from '../catalogue/deriveCatalogue.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { readRecords } from '../core/recordTable.ts'
import { entryVersions } from './catalogue.ts'
import { columnOf, loggerFilesNaming, studiesNaming } from './catalogueUses.ts'

type Row = { entry_id: number; fields: string; into_entry_id: number }

const rowsText = (condition: string) => `
  SELECT c.entry_id, r.fields, c.into_entry_id FROM catalogue_current c
  JOIN catalogue_revision r ON r.revision_id = c.revision_id
  WHERE ${condition} ORDER BY c.name_key, c.entry_id`

const choiceOf = ({ entry_id: entryId, fields, into_entry_id: intoEntryId }: Row): CatalogueChoice => ({
  entryId,
  fields: JSON.parse(fields),
  intoEntryId,
})

/** The entries of a kind that were merged into no other, in order of name. */
export function catalogueChoices(database: Database, kind: CatalogueKind): CatalogueChoice[] {
  return prepared<Row>(database, rowsText('c.kind = ? AND c.into_entry_id = c.entry_id')).all(kind).map(choiceOf)
}

/** How many specimens name each entry of a kind under any name; null: specimens do not name things of this kind. */
function countsOf(database: Database, kind: CatalogueKind): ReadonlyMap<number, number> | null {
  const column = columnOf[kind]
  if (column === null) return null
  const text = `SELECT ${column} AS id, count(*) AS specimens FROM specimen_current GROUP BY ${column}`
  const rows = prepared<{ id: number | null; specimens: number }>(database, text).all()
  return new Map(rows.flatMap(({ id, specimens }) => (id === null ? [] : [[id, specimens] as const])))
}

/** All entries of a kind with how many specimens name them, merged ones too, and which of them may be one thing. */
export function catalogueList(database: Database, kind: CatalogueKind): { rows: CatalogueRow[]; alike: LikeNames[] } {
  const counts = countsOf(database, kind)
  const rows = prepared<Row>(database, rowsText('c.kind = ?'))
    .all(kind)
    .map(choiceOf)
    .map((row) => ({ ...row, specimens: counts === null ? null : (counts.get(row.entryId) ?? 0) }))
  return { rows, alike: alikeAmong(rows) }
}

/** Pairs among entries that stand for themselves; lots of two adhesives, and boards of two woods, are two things. */
function alikeAmong(rows: readonly CatalogueChoice[]): LikeNames[] {
  const own = rows.filter(({ entryId, intoEntryId }) => entryId === intoEntryId)
  const byOwner = Map.groupBy(own, ({ fields }) => naturalKey(ownerOf(fields)))
  const pairs = [...byOwner.values()].flatMap((some): readonly AlikePair[] =>
    alikeNames(some.map(({ entryId, fields }) => ({ id: entryId, name: fields.name }))),
  )
  return pairs.map(({ id: entryId, otherId, differ }) => ({ entryId, otherId, differ }))
}

/** How many entries there are of each kind, and how many pairs that may be one thing. */
export function catalogueCounts(database: Database): { kind: CatalogueKind; entries: number; alike: number }[] {
  return catalogueKind.options.map((kind) => {
    const choices = catalogueChoices(database, kind)
    return { kind, entries: choices.length, alike: alikeAmong(choices).length }
  })
}

/** An entry with all its history, and what names it. Throws the trouble "not-found" when there is none. */
export function catalogueRecord(database: Database, entryId: number): CatalogueRecord {
  const versions = entryVersions(database, entryId)
  const { kind } = versions.at(-1)!.fields
  const row = catalogueList(database, kind).rows.find((one) => one.entryId === entryId)!
  const decisions = readRecords(
    database,
    catalogueDecisionKind,
    'WHERE from_entry_id = ? OR into_entry_id = ? ORDER BY catalogue_decision_id',
    entryId,
    entryId,
  )
  const namesOf = (condition: string, ...values: (number | string)[]) =>
    prepared<{ entryId: number; name: string }>(
      database,
      `SELECT entry_id AS entryId, name FROM catalogue_current c WHERE ${condition} ORDER BY name_key, entry_id`,
    ).all(...values)
  const own = namesOf('into_entry_id = ?', row.intoEntryId).map((one) => one.entryId)
  const ids = decisions.flatMap(({ fromEntryId, intoEntryId }) => [fromEntryId, intoEntryId])
  const partOf = { adhesive: 'lot', wood: 'board' } as Partial<Record<CatalogueKind, CatalogueKind>>
  const part = partOf[kind]
  const parts = part === undefined ? [] : namesOf(ownedText, part, row.intoEntryId)
  return {
    ...row,
    versions,
    decisions,
    names: namesOf('entry_id IN (SELECT value FROM json_each(?))', JSON.stringify([...ids, row.intoEntryId])),
    merged: namesOf('into_entry_id = ? AND entry_id <> ?', entryId, entryId),
    studies: studiesNaming(database, new Set(own)),
    loggerFiles: loggerFilesNaming(database, kind, new Set(own)),
    parts,
  }
}

/** Whose owner an entry is, under any name and after all merges. */
const ownedText = `c.kind = ? AND c.into_entry_id = c.entry_id AND EXISTS (
  SELECT 1 FROM catalogue_name n JOIN catalogue_current o ON o.entry_id = n.scope
  WHERE n.entry_id = c.entry_id AND o.into_entry_id = ?)`
