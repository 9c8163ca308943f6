import type { PullDecision } from '#contract/programme/pull.ts'
import type { GluedCount, PullSource } from '#domain/programme/calendar/studyPulls.ts'
import type { SeriesCount } from '#domain/programme/stock/studyStock.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { readRecords } from '../core/recordTable.ts'
import { notFound } from '../core/recordTrouble.ts'
import { blockStanding } from '../lists/blockStanding.ts'
import { type ReadableRows, readableRows } from '../lists/readableRows.ts'
import { newestStudy } from './studies.ts'
import { pullDecisionKind } from './studyKinds.ts'

/** Glued blocks `p` with their glue-ups `u` and specimens `s`, in SQL. */
const gluedBlocks = `block p JOIN glued_block g ON g.block_id = p.block_id JOIN glue_up u ON u.glue_up_id = g.glue_up_id
  JOIN specimen_current s ON s.specimen_id = g.specimen_id`
const gluedOn = "json_extract(u.fields, '$.gluedOn')"
const counted = `count(*) AS planned, ${(['waiting', 'broken', 'lost'] as const)
  .map((standing) => `sum(standing = '${standing}') AS ${standing}`)
  .join(', ')}`
/** One study (?), or all where that is NULL. */
const ofStudies = '(@studyId IS NULL OR p.study_id = @studyId)'

const countText = `
  SELECT studyId, gluedOn, ageMonths, ${counted}, count(DISTINCT series) AS series FROM (
    SELECT p.study_id AS studyId, ${gluedOn} AS gluedOn, p.age_months AS ageMonths, u.glue_up_id AS glueUpId,
      ${blockStanding} AS standing,
      CASE WHEN p.age_months IS NULL THEN json_array(p.adhesive, p.joint_type, p.gap_mm, p.exposure) END AS series
    FROM ${gluedBlocks} WHERE ${ofStudies})
  GROUP BY studyId, gluedOn, ageMonths
  ORDER BY studyId, min(glueUpId), ageMonths`

const ungluedText = `
  SELECT p.study_id AS studyId, p.age_months AS ageMonths, count(*) AS blocks FROM block p
  WHERE ${ofStudies} AND NOT EXISTS (SELECT 1 FROM glued_block g WHERE g.block_id = p.block_id)
  GROUP BY p.study_id, p.age_months`

/** What the pulls of one study, or of all, follow from; a study that cannot be read hides no other. */
export function pullSources(database: Database, studyId: number | null): ReadableRows<PullSource> {
  const ids = prepared<{ id: number }>(
    database,
    'SELECT DISTINCT study_id AS id FROM study_revision WHERE @studyId IS NULL OR study_id = @studyId ORDER BY study_id',
  ).all({ studyId })
  if (studyId !== null && ids.length === 0) throw notFound('study', studyId)
  const counts = byStudy(prepared<GluedCount & OfStudy>(database, countText).all({ studyId }))
  const unglued = byStudy(prepared<PullSource['unglued'][number] & OfStudy>(database, ungluedText).all({ studyId }))
  return readableRows(
    'study',
    ids.map(({ id }) => id),
    (id) => ({
      study: newestStudy(database, id),
      counts: counts.get(id) ?? [],
      unglued: unglued.get(id) ?? [],
      decisions: pullDecisions(database, id),
    }),
  )
}

type OfStudy = { studyId: number }

function byStudy<Row extends OfStudy>(rows: readonly Row[]): Map<number, Row[]> {
  return Map.groupBy(rows, ({ studyId }) => studyId)
}

function pullDecisions(database: Database, studyId: number): PullDecision[] {
  return readRecords(database, pullDecisionKind, 'WHERE study_id = ? ORDER BY pull_decision_id', studyId)
}

/** What became of the glued blocks of a study, series by series, in the order in which they were planned. */
export function seriesCounts(database: Database, studyId: number): SeriesCount[] {
  return prepared<SeriesCount>(
    database,
    `SELECT adhesive, jointType, gapMm, exposure, gluedOn, ageMonths, ${counted} FROM (
       SELECT p.block_id, p.adhesive, p.joint_type AS jointType, p.gap_mm AS gapMm, p.exposure, ${gluedOn} AS gluedOn,
         p.age_months AS ageMonths, ${blockStanding} AS standing
       FROM ${gluedBlocks} WHERE p.study_id = ?)
     GROUP BY adhesive, jointType, gapMm, exposure, gluedOn, ageMonths ORDER BY min(block_id)`,
  ).all(studyId)
}
