import type { PullName } from '#contract/programme/pull.ts'
import type { PullGroup } from '#contract/programme/pullProcedures.ts'
import type { GluedCount, PullSource } from '#domain/programme/calendar/studyPulls.ts'
import type { SeriesCount } from '#domain/programme/stock/studyStock.ts'
import { nameInForce } from '../catalogue/names.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { glueUpsInForce } from '../lists/plannedBlock.ts'
import { type ReadableRows, readableRows } from '../lists/readableRows.ts'
import { correctionsOfGlueUps, decisionsOnPulls } from './decisionsOnPulls.ts'
import { specimensOfPull } from './orderToBreak.ts'
import { newestStudy } from './studies.ts'

const gluedOn = "json_extract(u.fields, '$.gluedOn')"
const standings = ['waiting', 'broken', 'lost'] as const
const counted = `count(*) AS planned, ${standings.map((one) => `sum(s.standing = '${one}') AS ${one}`).join(', ')}`
const summed = ['planned', ...standings].map((one) => `sum(${one}) AS ${one}`).join(', ')

/** The study (?) alone, or every one: each has an index of its own kind to go along. */
const ofStudies = (studyId: number | null) => (studyId === null ? 'study_id IS NOT NULL' : 'study_id = ?')

/** Glued blocks by study, day and age; counted along an index, so that a hundred thousand are no trouble. */
const countText = (studyId: number | null) => `
  SELECT studyId, ${gluedOn} AS gluedOn, ageMonths, ${summed}, 0 AS series FROM (
    SELECT s.study_id AS studyId, s.glue_up_id AS glueUpId, s.pull_age_months AS ageMonths, ${counted}
    FROM specimen_current s WHERE s.${ofStudies(studyId)} GROUP BY s.study_id, s.glue_up_id, s.pull_age_months)
  JOIN ${glueUpsInForce} u ON u.glue_up_id = glueUpId
  GROUP BY studyId, gluedOn, ageMonths ORDER BY studyId, min(glueUpId), ageMonths`

/** Of how many series there are spares of one day. */
const seriesText = (studyId: number | null) => `
  SELECT s.study_id AS studyId, ${gluedOn} AS gluedOn,
    count(DISTINCT json_array(p.adhesive, p.joint_type, p.gap_mm, p.exposure)) AS series
  FROM specimen_current s JOIN ${glueUpsInForce} u ON u.glue_up_id = s.glue_up_id
  JOIN glued_block g ON g.specimen_id = s.specimen_id JOIN block p ON p.block_id = g.block_id
  WHERE s.${ofStudies(studyId)} AND s.pull_age_months IS NULL GROUP BY s.study_id, gluedOn`

const plannedText = (studyId: number | null) => `
  SELECT study_id AS studyId, age_months AS ageMonths, count(*) AS blocks FROM block
  WHERE ${ofStudies(studyId)} GROUP BY study_id, age_months`

/** What the pulls of one study, or of all, follow from; a study that cannot be read hides no other. */
export function pullSources(database: Database, studyId: number | null): ReadableRows<PullSource> {
  const ids = prepared<{ id: number }>(
    database,
    'SELECT DISTINCT study_id AS id FROM study_revision WHERE @studyId IS NULL OR study_id = @studyId ORDER BY study_id',
  ).all({ studyId })
  if (studyId !== null && ids.length === 0) throw notFound('study', studyId)
  const given = studyId === null ? [] : [studyId]
  const counts = byStudy(withSpareSeries(database, studyId))
  const planned = byStudy(prepared<PlannedCount>(database, plannedText(studyId)).all(...given))
  return readableRows(
    'study',
    ids.map(({ id }) => id),
    (id) => ({
      study: newestStudy(database, id),
      counts: counts.get(id) ?? [],
      unglued: unglued(planned.get(id) ?? [], counts.get(id) ?? []),
      decisions: decisionsOnPulls(database, id),
      corrections: correctionsOfGlueUps(database, id),
    }),
  )
}

type OfStudy = { studyId: number }
type PlannedCount = PullSource['unglued'][number] & OfStudy

function withSpareSeries(database: Database, studyId: number | null): (GluedCount & OfStudy)[] {
  const given = studyId === null ? [] : [studyId]
  const spares = prepared<{ gluedOn: string; series: number } & OfStudy>(database, seriesText(studyId)).all(...given)
  const series = new Map(spares.map((row) => [`${row.studyId} ${row.gluedOn}`, row.series]))
  return prepared<GluedCount & OfStudy>(database, countText(studyId))
    .all(...given)
    .map((row) => (row.ageMonths === null ? { ...row, series: series.get(`${row.studyId} ${row.gluedOn}`) ?? 0 } : row))
}

/** What is planned and not glued, age by age. */
function unglued(planned: readonly PlannedCount[], glued: readonly GluedCount[]): PullSource['unglued'] {
  const byAge = Map.groupBy(glued, ({ ageMonths }) => ageMonths)
  return planned
    .map(({ ageMonths, blocks }) => ({
      ageMonths,
      blocks: blocks - (byAge.get(ageMonths) ?? []).reduce((sum, one) => sum + one.planned, 0),
    }))
    .filter(({ blocks }) => blocks > 0)
}

function byStudy<Row extends OfStudy>(rows: readonly Row[]): Map<number, Row[]> {
  return Map.groupBy(rows, ({ studyId }) => studyId)
}

/** What became of the glued blocks of a study, series by series, in the order in which they were planned. */
export function seriesCounts(database: Database, studyId: number): SeriesCount[] {
  return prepared<SeriesCount>(
    database,
    `SELECT p.adhesive, p.joint_type AS jointType, p.gap_mm AS gapMm, p.exposure, ${gluedOn} AS gluedOn,
       p.age_months AS ageMonths, ${counted}
     FROM block p JOIN glued_block g ON g.block_id = p.block_id JOIN ${glueUpsInForce} u ON u.glue_up_id = g.glue_up_id
     JOIN specimen_current s ON s.specimen_id = g.specimen_id
     WHERE p.study_id = ?
     GROUP BY p.adhesive, p.joint_type, p.gap_mm, p.exposure, gluedOn, p.age_months ORDER BY min(p.block_id)`,
  ).all(studyId)
}

const waitingText = `
  SELECT ${nameInForce('s.adhesive_id', 'r.adhesive')} AS adhesive, ${nameInForce('s.joint_type_id', 'r.joint_type')} AS jointType,
    r.bond_line_gap_mm AS gapMm, ${nameInForce('s.exposure_id', 'r.exposure')} AS exposure,
    ${nameInForce('s.place_id', 'r.place')} AS place, count(*) AS blocks
  FROM json_each(?) JOIN specimen_current s ON s.specimen_id = value JOIN specimen_revision r ON r.revision_id = s.revision_id
  GROUP BY 1, 2, 3, 4, 5 ORDER BY min(s.specimen_id)`

const ungluedText = `
  SELECT adhesive, joint_type AS jointType, gap_mm AS gapMm, exposure, '' AS place, count(*) AS blocks
  FROM block p WHERE study_id = ? AND age_months = ?
    AND NOT EXISTS (SELECT 1 FROM glued_block b WHERE b.block_id = p.block_id)
  GROUP BY 1, 2, 3, 4 ORDER BY min(p.block_id)`

/**
 * The blocks that each of some pulls takes from the shelf, by what they are and where they lie, in the order in which they were
 * planned; before a pull has a day of glue-up, the planned ones.
 */
export function pullBlocks(database: Database, pulls: readonly PullName[]): PullGroup[][] {
  return pulls.map((pull) =>
    pull.gluedOn === null
      ? prepared<PullGroup>(database, ungluedText).all(pull.studyId, pull.ageMonths)
      : prepared<PullGroup>(database, waitingText).all(JSON.stringify(specimensOfPull(database, pull))),
  )
}
