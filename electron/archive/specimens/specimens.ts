import type Database from 'better-sqlite3'
import type { Specimen, SpecimenFields } from '#contract/specimens/specimen.ts'
import { appendLedger } from '../core/ledger.ts'
import { folded } from '../core/naturalOrder.ts'
import { prepared } from '../core/prepared.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { refreshSpecimen } from '../lists/current.ts'

export type SpecimenRow = {
  revision_id: number
  specimen_id: number
  revision: number
  recorded_at: string
  by: string
  reason: string
  number: string
  adhesive: string
  lot: string
  joint_type: string
  exposure: string
  bond_line_gap_mm: number | null
  overlap_length_mm: number | null
  overlap_width_mm: number | null
  area_mm2: number | null
  glued_on: string | null
  place: string
  notes: string
  demo: number
}

/** A revision as the contract has it. */
export function specimenFromRow(row: SpecimenRow): Specimen {
  return {
    specimenId: row.specimen_id,
    revision: row.revision,
    recordedAt: row.recorded_at,
    by: row.by,
    reason: row.reason,
    fields: {
      number: row.number,
      adhesive: row.adhesive,
      lot: row.lot,
      jointType: row.joint_type,
      exposure: row.exposure,
      bondLineGapMm: row.bond_line_gap_mm,
      overlapLengthMm: row.overlap_length_mm,
      overlapWidthMm: row.overlap_width_mm,
      areaMm2: row.area_mm2,
      gluedOn: row.glued_on,
      place: row.place,
      notes: row.notes,
      demo: row.demo === 1,
    },
  }
}

function refuseTakenNumber(database: Database.Database, number: string, specimenId: number): void {
  const owner = prepared<{ specimen_id: number }>(
    database,
    'SELECT specimen_id FROM specimen_current WHERE number_folded = ?',
  ).get(folded(number))
  if (owner !== undefined && owner.specimen_id !== specimenId)
    throw conflict(
      `There is a specimen with the number ${number} already.`,
      'Give each specimen its own number, as written on the block.',
    )
}

/** What the ledger holds of a revision: just what is stored. */
export function specimenContent(database: Database.Database, revisionId: number): Specimen {
  const row = prepared<SpecimenRow>(database, 'SELECT * FROM specimen_revision WHERE revision_id = ?').get(revisionId)
  if (row === undefined) throw notFound('revision', revisionId)
  return specimenFromRow(row)
}

function storeRevision(database: Database.Database, specimen: Specimen): Specimen {
  const { fields } = specimen
  refuseTakenNumber(database, fields.number, specimen.specimenId)
  const { lastInsertRowid } = prepared(
    database,
    `INSERT INTO specimen_revision (specimen_id, revision, recorded_at, by, reason, number, adhesive, lot, joint_type,
       exposure, bond_line_gap_mm, overlap_length_mm, overlap_width_mm, area_mm2, glued_on, place, notes, demo)
     VALUES (@specimenId, @revision, @recordedAt, @by, @reason, @number, @adhesive, @lot, @jointType,
       @exposure, @bondLineGapMm, @overlapLengthMm, @overlapWidthMm, @areaMm2, @gluedOn, @place, @notes, @demo)`,
  ).run({ ...specimen, ...fields, demo: fields.demo ? 1 : 0 })
  const revisionId = Number(lastInsertRowid)
  const stored = specimenContent(database, revisionId)
  appendLedger(database, 'specimen', revisionId, specimen.recordedAt, stored)
  refreshSpecimen(database, specimen.specimenId)
  touchBreaksOf(database, specimen.specimenId)
  return stored
}

/** The summary of a break shows the fields of its specimen. */
function touchBreaksOf(database: Database.Database, specimenId: number): void {
  const breaks = prepared<{ break_id: number }>(database, 'SELECT break_id FROM break_current WHERE specimen_id = ?')
  for (const { break_id } of breaks.all(specimenId)) touch(database, `break ${break_id}`, `result ${break_id}`)
}

/** Adds specimens, all or none. */
export function addSpecimens(
  database: Database.Database,
  list: readonly SpecimenFields[],
  recordedAt: string,
  by: string,
): Specimen[] {
  return database
    .transaction(() => {
      let last = prepared<{ last: number }>(
        database,
        'SELECT coalesce(max(specimen_id), 0) AS last FROM specimen_revision',
      ).get()!.last
      return list.map((fields) => {
        last += 1
        return storeRevision(database, { specimenId: last, revision: 1, recordedAt, by, reason: '', fields })
      })
    })
    .immediate()
}

/** Adds one specimen. */
export function addSpecimen(
  database: Database.Database,
  fields: SpecimenFields,
  recordedAt: string,
  by: string,
): Specimen {
  return addSpecimens(database, [fields], recordedAt, by)[0]!
}

/** Lays a corrected revision over the older ones, which stay. */
export function correctSpecimen(
  database: Database.Database,
  specimenId: number,
  fields: SpecimenFields,
  recordedAt: string,
  by: string,
  reason: string,
): Specimen {
  return database
    .transaction(() => {
      const revisions = specimenRevisions(database, specimenId)
      return storeRevision(database, { specimenId, revision: revisions.length + 1, recordedAt, by, reason, fields })
    })
    .immediate()
}

/** Every revision, newest last. Throws the trouble "not-found" when there is none. */
export function specimenRevisions(database: Database.Database, specimenId: number): Specimen[] {
  const rows = prepared<SpecimenRow>(
    database,
    'SELECT * FROM specimen_revision WHERE specimen_id = ? ORDER BY revision',
  ).all(specimenId)
  if (rows.length === 0) throw notFound('specimen', specimenId)
  return rows.map(specimenFromRow)
}
