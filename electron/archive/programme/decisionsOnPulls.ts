// Held by tests/archive/programme/glueUp/correctGlueUp.spec.ts.
import type { PullDecision } from '#contract/programme/pull.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { readRecords } from '../core/recordTable.ts'
import { glueUpsInForce } from '../lists/plannedBlock.ts'
import { pullDecisionKind } from './studyKinds.ts'

/**
 * What was decided about the pulls of a study, oldest first. A decision on blocks of a day on which, by a later correction, none was
 * glued, is one on those of the day that it was corrected to.
 */
export function decisionsOnPulls(database: Database, studyId: number): PullDecision[] {
  const decisions = readRecords(database, pullDecisionKind, 'WHERE study_id = ? ORDER BY pull_decision_id', studyId)
  if (decisions.length === 0 || correctionsOfGlueUps(database, studyId) === 0) return decisions
  const dayNow = daysNow(database, studyId)
  return decisions.map((one) => (one.gluedOn === null ? one : { ...one, gluedOn: dayNow(one.gluedOn) }))
}

/** How often glue-ups of a study were corrected. */
export function correctionsOfGlueUps(database: Database, studyId: number): number {
  return prepared<{ count: number }>(
    database,
    'SELECT count(*) AS count FROM glue_up_correction JOIN glue_up USING (glue_up_id) WHERE study_id = ?',
  ).get(studyId)!.count
}

type DayOf = { glueUpId: number; day: string }

function daysNow(database: Database, studyId: number): (day: string) => string {
  const now = prepared<DayOf>(
    database,
    `SELECT glue_up_id AS glueUpId, json_extract(fields, '$.gluedOn') AS day FROM ${glueUpsInForce} WHERE study_id = ?`,
  ).all(studyId)
  const dayOf = new Map(now.map(({ glueUpId, day }) => [glueUpId, day]))
  const inForce = new Set(dayOf.values())
  const ever = prepared<DayOf>(
    database,
    `SELECT glueUpId, json_extract(fields, '$.gluedOn') AS day FROM (
       SELECT glue_up_id AS glueUpId, fields, 0 AS correction FROM glue_up WHERE study_id = @studyId
       UNION ALL SELECT glue_up_id, c.fields, glue_up_correction_id FROM glue_up_correction c JOIN glue_up u USING (glue_up_id)
       WHERE study_id = @studyId)
     ORDER BY glueUpId DESC, correction DESC`,
  ).all({ studyId })
  const glueUpOf = new Map(ever.map(({ day, glueUpId }) => [day, glueUpId]))
  return (day) => (inForce.has(day) ? day : (dayOf.get(glueUpOf.get(day) ?? 0) ?? day))
}
