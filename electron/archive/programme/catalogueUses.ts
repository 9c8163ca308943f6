// Held by tests/archive/programme/catalogueLists.spec.ts.
import type { CatalogueKind } from '#contract/programme/catalogue.ts'
import type { MergePreview } from '#contract/programme/catalogueProcedures.ts'
import { lastOf, mergedInto } from '../catalogue/deriveCatalogue.ts'
import { nameInForce, nameReader } from '../catalogue/names.ts'
import { writtenOfStudy } from '../catalogue/written.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { readRecords } from '../core/recordTable.ts'
import { refuseMerge } from './catalogueMerge.ts'
import { studyKind } from './studyKinds.ts'
/** Columns of specimen_current that name entries of a kind; no specimen names the people who enter it. */
export const columnOf: Readonly<Record<CatalogueKind, string | null>> = {
  adhesive: 'adhesive_id',
  lot: 'lot_id',
  wood: 'wood_id',
  board: 'board_id',
  'joint-type': 'joint_type_id',
  exposure: 'exposure_id',
  place: 'place_id',
  operator: null,
}

/** The studies that name one of some entries, those that began first first. */
export function studiesNaming(database: Database, entryIds: ReadonlySet<number>): { studyId: number; title: string }[] {
  const read = nameReader(database)
  return readRecords(
    database,
    studyKind,
    `WHERE revision = (SELECT max(revision) FROM study_revision o WHERE o.study_id = study_revision.study_id)
     ORDER BY study_id`,
  )
    .filter(({ fields }) => writtenOfStudy(fields).some((written) => entryIds.has(read(written)?.entryId ?? 0)))
    .map(({ studyId, fields }) => ({ studyId, title: fields.title }))
}

/** The files of loggers that hung in one of some places or exposures, each name once, those brought in last first. */
export function loggerFilesNaming(database: Database, kind: CatalogueKind, entryIds: ReadonlySet<number>): string[] {
  const read = nameReader(database)
  const files = prepared<{ store: string; fileName: string }>(
    database,
    'SELECT store, file_name AS fileName FROM climate_import WHERE store_kind = ? ORDER BY climate_import_id DESC',
  ).all(kind)
  const named = files.filter(({ store }) => entryIds.has(read({ kind, name: store, of: '' })?.entryId ?? 0))
  return [...new Set(named.map(({ fileName }) => fileName))]
}

type Group = Pick<MergePreview['groups'][number], 'adhesive' | 'jointType' | 'exposure' | 'bondLineGapMm'>
type CountedGroup = Group &
  Record<'adhesive_id' | 'joint_type_id' | 'exposure_id', number | null> & { specimens: number }

const groupsText = (column: string) => `
  SELECT s.adhesive_id, s.joint_type_id, s.exposure_id, r.bond_line_gap_mm AS bondLineGapMm, count(*) AS specimens,
    ${nameInForce('s.adhesive_id', 'r.adhesive')} AS adhesive, ${nameInForce('s.joint_type_id', 'r.joint_type')} AS jointType,
    ${nameInForce('s.exposure_id', 'r.exposure')} AS exposure
  FROM specimen_current s JOIN specimen_revision r ON r.revision_id = s.revision_id
  WHERE s.${column} IN (?, ?)
  GROUP BY s.adhesive_id, s.joint_type_id, s.exposure_id, r.bond_line_gap_mm ORDER BY min(s.number_key)`

/** What becomes one where one entry is merged into another. Throws the trouble that says why they cannot be. */
export function previewMerge(database: Database, fromEntryId: number, intoEntryId: number): MergePreview {
  refuseMerge(database, fromEntryId, intoEntryId)
  const { kind } = prepared<{ kind: CatalogueKind }>(
    database,
    'SELECT kind FROM catalogue_current WHERE entry_id = ?',
  ).get(fromEntryId)!
  const column = columnOf[kind]
  const merge = { fromEntryId, intoEntryId }
  if (column === null) return { ...merge, fromSpecimens: null, intoSpecimens: null, groups: [] }
  const last = lastOf(intoEntryId, mergedInto(database))
  const counts = {
    fromSpecimens: countOf(database, column, fromEntryId),
    intoSpecimens: countOf(database, column, last),
  }
  if (!isFactor(column)) return { ...merge, ...counts, groups: [] }
  const found = prepared<CountedGroup>(database, groupsText(column)).all(fromEntryId, last)
  const keyOf = (group: CountedGroup) =>
    JSON.stringify([...factors.map((factor) => (factor === column ? null : group[factor])), group.bondLineGapMm])
  const before = new Map(found.flatMap((group) => (group[column] === last ? [[keyOf(group), group] as const] : [])))
  const groups = found.flatMap((group) => {
    const same = group[column] === fromEntryId ? before.get(keyOf(group)) : undefined
    if (same === undefined) return []
    const { adhesive, jointType, bondLineGapMm, exposure, specimens: intoSpecimens } = same
    return [{ adhesive, jointType, bondLineGapMm, exposure, fromSpecimens: group.specimens, intoSpecimens }]
  })
  return { ...merge, ...counts, groups }
}

const factors = ['adhesive_id', 'joint_type_id', 'exposure_id'] as const

const isFactor = (column: string): column is (typeof factors)[number] => (factors as readonly string[]).includes(column)

function countOf(database: Database, column: string, entryId: number): number {
  const text = `SELECT count(*) AS specimens FROM specimen_current WHERE ${column} = ?`
  return prepared<{ specimens: number }>(database, text).get(entryId)!.specimens
}
