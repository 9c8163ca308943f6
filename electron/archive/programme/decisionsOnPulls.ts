// Held by tests/archive/programme/glueUp/correctGlueUp.spec.ts.
import type { PullDecision } from '#contract/programme/pull.ts'
import type { GlueUpDays } from '#domain/programme/calendar/dayNumbers.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { readRecords } from '../core/recordTable.ts'
import { pullDecisionKind } from './studyKinds.ts'

/**
 * What was decided about the pulls of a study, oldest first. A decision on the blocks of a day is one on those glue-ups that were of
 * that day when it was recorded: it stays with the day as long as one of them does, and goes else where they were corrected to.
 */
export function decisionsOnPulls(database: Database, studyId: number): PullDecision[] {
  const decisions = readRecords(database, pullDecisionKind, 'WHERE study_id = ? ORDER BY pull_decision_id', studyId)
  if (decisions.length === 0 || correctionsOfGlueUps(database, studyId) === 0) return decisions
  const glueUps = dayHistories(database, studyId)
  return decisions.map((one) =>
    one.gluedOn === null ? one : { ...one, gluedOn: dayNow(glueUps, one.gluedOn, one.recordedAt) },
  )
}

/** The studies that have a decision by which a pull was added; of one study, or of all. */
export function studiesWithAddedPulls(database: Database, studyId: number | null): number[] {
  return prepared<{ id: number }>(
    database,
    `SELECT DISTINCT study_id AS id FROM pull_decision
     WHERE kind = 'added' AND (@studyId IS NULL OR study_id = @studyId) ORDER BY study_id`,
  )
    .all({ studyId })
    .map(({ id }) => id)
}

/** How often glue-ups of a study were corrected. */
export function correctionsOfGlueUps(database: Database, studyId: number): number {
  return prepared<{ count: number }>(
    database,
    'SELECT count(*) AS count FROM glue_up_correction JOIN glue_up USING (glue_up_id) WHERE study_id = ?',
  ).get(studyId)!.count
}

/** The first and the present day of each glue-up of planned blocks of a study, in the order in which they were recorded. */
export function daysOfGlueUps(database: Database, studyId: number): GlueUpDays[] {
  return dayHistories(database, studyId).map(({ glueUpId, days }) => ({
    glueUpId,
    firstOn: days[0]!.day,
    gluedOn: days.at(-1)!.day,
  }))
}

type RecordedDay = { recordedAt: string; day: string }
/** A glue-up with the day that was entered and those that corrections gave it, oldest first. */
type DayHistory = { glueUpId: number; days: RecordedDay[] }

function dayHistories(database: Database, studyId: number): DayHistory[] {
  const recorded = prepared<RecordedDay & { glueUpId: number }>(
    database,
    `SELECT glueUpId, recordedAt, json_extract(fields, '$.gluedOn') AS day FROM (
       SELECT glue_up_id AS glueUpId, recorded_at AS recordedAt, fields, 0 AS correction FROM glue_up
       UNION ALL SELECT glue_up_id, recorded_at, fields, glue_up_correction_id FROM glue_up_correction)
     WHERE glueUpId IN (SELECT u.glue_up_id FROM glue_up u WHERE u.study_id = @studyId AND EXISTS (
       SELECT 1 FROM specimen_current s WHERE s.study_id = @studyId AND s.glue_up_id = u.glue_up_id))
     ORDER BY glueUpId, correction`,
  ).all({ studyId })
  return [...Map.groupBy(recorded, ({ glueUpId }) => glueUpId)].map(([glueUpId, days]) => ({ glueUpId, days }))
}

function dayNow(glueUps: readonly DayHistory[], day: string, decidedAt: string): string {
  const now = glueUps
    .filter(({ days: [entered, ...corrected] }) => {
      if (entered!.recordedAt > decidedAt) return false
      return (corrected.findLast(({ recordedAt }) => recordedAt < decidedAt) ?? entered!).day === day
    })
    .map(({ days }) => days.at(-1)!.day)
  return now.includes(day) ? day : (now[0] ?? day)
}
