import type { PullName } from '#contract/programme/pull.ts'
import type { Spare } from '#domain/programme/calendar/shareSpares.ts'
import type { GluedCount, PullSource } from '#domain/programme/calendar/studyPulls.ts'
import type { SeriesCount } from '#domain/programme/stock/studyStock.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { glueUpsInForce } from '../lists/plannedBlock.ts'
import { type ReadableRows, readableRows } from '../lists/readableRows.ts'
import { correctionsOfGlueUps, daysOfGlueUps, decisionsOnPulls, studiesWithAddedPulls } from './decisionsOnPulls.ts'
import { newestStudy } from './studies.ts'

const gluedOn = "json_extract(u.fields, '$.gluedOn')"
const standings = ['waiting', 'broken', 'lost'] as const
const counted = `count(*) AS planned, ${standings.map((one) => `sum(s.standing = '${one}') AS ${one}`).join(', ')}`
const summed = ['planned', ...standings].map((one) => `sum(${one}) AS ${one}`).join(', ')

/** The study (?) alone, or every one: each has an index of its own kind to go along. */
const ofStudies = (studyId: number | null) => (studyId === null ? 'study_id IS NOT NULL' : 'study_id = ?')

/** Glued blocks by study, day and age; counted along an index, so that a hundred thousand are no trouble. */
const countText = (studyId: number | null) => `
  SELECT studyId, ${gluedOn} AS gluedOn, ageMonths, ${summed} FROM (
    SELECT s.study_id AS studyId, s.glue_up_id AS glueUpId, s.pull_age_months AS ageMonths, ${counted}
    FROM specimen_current s WHERE s.${ofStudies(studyId)} GROUP BY s.study_id, s.glue_up_id, s.pull_age_months)
  JOIN ${glueUpsInForce} u ON u.glue_up_id = glueUpId
  GROUP BY studyId, gluedOn, ageMonths ORDER BY studyId, min(glueUpId), ageMonths`

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
  const counts = byStudy(prepared<GluedCount & OfStudy>(database, countText(studyId)).all(...given))
  const spares = byStudy(sparesOfAddedPulls(database, studyId))
  const planned = byStudy(prepared<PlannedCount>(database, plannedText(studyId)).all(...given))
  return readableRows(
    'study',
    ids.map(({ id }) => id),
    (id) => {
      const corrections = correctionsOfGlueUps(database, id)
      return {
        study: newestStudy(database, id),
        counts: counts.get(id) ?? [],
        unglued: unglued(planned.get(id) ?? [], counts.get(id) ?? []),
        decisions: decisionsOnPulls(database, id),
        spares: spares.get(id) ?? [],
        corrections,
        glueUps: corrections === 0 ? [] : daysOfGlueUps(database, id),
      }
    },
  )
}

type OfStudy = { studyId: number }
type PlannedCount = PullSource['unglued'][number] & OfStudy

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

type FoundSpare = Omit<Spare, 'brokenAtMonths'> & OfStudy

/**
 * The glued spares of one study, or of all, in the order in which they are to be broken; of studies alone that have a pull which
 * was added, for no other takes any.
 */
function sparesOfAddedPulls(database: Database, studyId: number | null): (Spare & OfStudy)[] {
  const studyIds = studiesWithAddedPulls(database, studyId)
  if (studyIds.length === 0) return []
  const spares = prepared<FoundSpare>(
    database,
    `SELECT s.study_id AS studyId, s.specimen_id AS specimenId, ${gluedOn} AS gluedOn,
       json_array(p.adhesive, p.joint_type, p.gap_mm, p.exposure) AS series, s.standing
     FROM specimen_current s JOIN ${glueUpsInForce} u ON u.glue_up_id = s.glue_up_id
     JOIN glued_block g ON g.specimen_id = s.specimen_id JOIN block p ON p.block_id = g.block_id
     WHERE s.study_id IN (SELECT value FROM json_each(?)) AND s.pull_age_months IS NULL
     ORDER BY p.breaking_order, p.block_id`,
  ).all(JSON.stringify(studyIds))
  const pullsOf = pullsOfLastSessions(
    database,
    spares.filter(({ standing }) => standing === 'broken').map(({ specimenId }) => specimenId),
  )
  return spares.map((spare) => ({
    ...spare,
    brokenAtMonths: (pullsOf.get(spare.specimenId) ?? [])
      .filter((pull) => pull.studyId === spare.studyId)
      .map(({ ageMonths }) => ageMonths),
  }))
}

/** The pulls of the last breaking session that each of some specimens was in, which is the one in which it was broken if it was in any. */
function pullsOfLastSessions(database: Database, specimenIds: readonly number[]): Map<number, PullName[]> {
  const found = new Map<number, PullName[]>()
  if (specimenIds.length === 0) return found
  const asked = new Set(specimenIds)
  const sessions = prepared<{ pulls: string; specimen_ids: string }>(
    database,
    'SELECT pulls, specimen_ids FROM breaking_session ORDER BY breaking_session_id',
  ).all()
  for (const session of sessions) {
    const pulls: PullName[] = JSON.parse(session.pulls)
    const members: number[] = JSON.parse(session.specimen_ids)
    for (const specimenId of members) if (asked.has(specimenId)) found.set(specimenId, pulls)
  }
  return found
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
