// Held by tests/archive/programme/glueUp/glueUps.spec.ts.
import type { GlueUpCorrection } from '#contract/programme/glueUp.ts'
import type {
  BlockToGlue,
  GlueUpPlan,
  GlueUpRecord,
  GlueUpRow,
  StudyToGlue,
} from '#contract/programme/glueUpProcedures.ts'
import type { Block, StudyFields } from '#contract/programme/study.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import type { Database } from '../../core/database.ts'
import { prepared } from '../../core/prepared.ts'
import { readRecord, readRecords } from '../../core/recordTable.ts'
import { notFound } from '../../core/recordTrouble.ts'
import { glueUpCorrectionKind, glueUpKind } from '../sessionKinds.ts'
import { blockKind } from '../studyKinds.ts'

const newestStudies = `(SELECT study_id, fields FROM study_revision r
  WHERE revision = (SELECT max(revision) FROM study_revision WHERE study_id = r.study_id))`

const glueUpText = `
  SELECT g.glue_up_id, json_extract(s.fields, '$.title') AS study_title,
    (SELECT count(*) FROM glued_block b WHERE b.glue_up_id = g.glue_up_id) AS blocks
  FROM glue_up g LEFT JOIN ${newestStudies} s ON s.study_id = g.study_id`

type FoundGlueUp = { glue_up_id: number; study_title: string | null; blocks: number }

/** A glue-up as it stands in force. */
function rowFrom(database: Database, { glue_up_id, study_title, blocks }: FoundGlueUp): GlueUpRow {
  const entered = readRecord(database, glueUpKind, glue_up_id)
  const fields = correctionsOf(database, glue_up_id).at(-1)?.fields ?? entered.fields
  return { ...entered, fields, studyTitle: study_title, blocks }
}

/** Oldest first. */
function correctionsOf(database: Database, glueUpId: number): GlueUpCorrection[] {
  const order = 'WHERE glue_up_id = ? ORDER BY glue_up_correction_id'
  return readRecords(database, glueUpCorrectionKind, order, glueUpId)
}

/** Every glue-up, newest first. */
export function glueUps(database: Database): GlueUpRow[] {
  return prepared<FoundGlueUp>(database, `${glueUpText} ORDER BY g.glue_up_id DESC`)
    .all()
    .map((row) => rowFrom(database, row))
}

/** One glue-up. Throws the trouble "not-found" when there is none. */
export function glueUpRow(database: Database, glueUpId: number): GlueUpRow {
  const row = prepared<FoundGlueUp>(database, `${glueUpText} WHERE g.glue_up_id = ?`).get(glueUpId)
  if (row === undefined) throw notFound('glue-up', glueUpId)
  return rowFrom(database, row)
}

/** A glue-up with the specimens that it made, as they are now, in the order in which they were entered. */
export function glueUp(database: Database, glueUpId: number): GlueUpRecord {
  const specimens = prepared<GlueUpRecord['specimens'][number]>(
    database,
    `SELECT r.specimen_id AS specimenId, r.number, r.adhesive, r.exposure, p.age_months AS ageMonths, r.board,
       r.overlap_length_mm AS overlapLengthMm, r.overlap_width_mm AS overlapWidthMm, r.area_mm2 AS areaMm2, r.place
     FROM glued_block b
     JOIN specimen_current s ON s.specimen_id = b.specimen_id
     JOIN specimen_revision r ON r.revision_id = s.revision_id
     LEFT JOIN block p ON p.block_id = b.block_id
     WHERE b.glue_up_id = ? ORDER BY b.glued_block_id`,
  ).all(glueUpId)
  const corrections = correctionsOf(database, glueUpId)
  const entered = corrections.length === 0 ? null : readRecord(database, glueUpKind, glueUpId).fields
  return { ...glueUpRow(database, glueUpId), entered, corrections, specimens }
}

/** Studies with blocks that are still to be glued, newest first. */
export function studiesToGlue(database: Database): StudyToGlue[] {
  return prepared<StudyToGlue>(
    database,
    `SELECT s.study_id AS studyId, json_extract(s.fields, '$.title') AS title,
       json_extract(s.fields, '$.startOn') AS startOn, count(*) AS toGlue
     FROM ${newestStudies} s JOIN block b ON b.study_id = s.study_id
     WHERE NOT EXISTS (SELECT 1 FROM glued_block g WHERE g.block_id = b.block_id)
     GROUP BY s.study_id ORDER BY s.study_id DESC`,
  ).all()
}

/** What of a study is still to be glued, in the order of the short numbers. Throws the trouble "not-found" when there is none. */
export function glueUpPlan(database: Database, studyId: number): GlueUpPlan {
  const found = prepared<{ fields: string }>(database, `SELECT fields FROM ${newestStudies} WHERE study_id = ?`).get(
    studyId,
  )
  if (found === undefined) throw notFound('study', studyId)
  const { title, wood, overlapLengthMm, overlapWidthMm }: StudyFields = JSON.parse(found.fields)
  const blocks = readRecords(
    database,
    blockKind,
    'WHERE study_id = ? AND NOT EXISTS (SELECT 1 FROM glued_block g WHERE g.block_id = block.block_id) ORDER BY running',
    studyId,
  )
  return { ...{ studyId, title, wood, overlapLengthMm, overlapWidthMm }, blocks: blocks.map(toGlueFrom) }
}

function toGlueFrom({ blockId, running, adhesive, jointType, gapMm, exposure, ageMonths, board }: Block): BlockToGlue {
  return { blockId, number: labelOf(running)!, adhesive, jointType, gapMm, exposure, ageMonths, board }
}
