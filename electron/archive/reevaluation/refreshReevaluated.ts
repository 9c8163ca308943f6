import type Database from 'better-sqlite3'
import { prepared } from '../core/prepared.ts'
import { touch } from '../core/touched.ts'
import { refreshBreak } from '../lists/current.ts'
import { standingText } from '../lists/inForce.ts'

/**
 * Brings the current rows of all breaks of a re-evaluation, and of their specimens, up to date: whole tables at once, since
 * one after the other would keep the samples of a running capture waiting. Call it inside the transaction of the decision.
 */
export function refreshReevaluated(
  database: Database.Database,
  reevaluationId: number,
): { breakIds: number[]; specimenIds: number[] } {
  const rows = prepared<{ break_id: number; specimen_id: number | null; peak_decision_id: number | null }>(
    database,
    `SELECT break_id, specimen_id, peak_decision_id FROM break_current
     WHERE break_id IN (SELECT break_id FROM evaluation WHERE reevaluation_id = ?) ORDER BY break_id`,
  ).all(reevaluationId)
  prepared(
    database,
    `UPDATE break_current AS b SET evaluation_id = e.evaluation_id, outcome = e.outcome, peak_n = e.peak_n
     FROM evaluation n, evaluation e
     WHERE n.reevaluation_id = ? AND b.break_id = n.break_id AND b.peak_decision_id IS NULL
       AND e.evaluation_id = (${standingText('n.break_id')} LIMIT 1)`,
  ).run(reevaluationId)
  prepared(
    database,
    `UPDATE specimen_current AS s SET peak_n = b.peak_n, break_in_force = b.break_id, started_at = b.started_at,
       wood_failure_percent = b.wood_failure_percent
     FROM (SELECT max(c.break_id) AS break_id, c.specimen_id, c.peak_n, c.started_at, c.wood_failure_percent
       FROM break_current c
       WHERE c.outcome = 'break' AND c.set_aside IS NULL AND c.specimen_id IN (SELECT t.specimen_id FROM break_current t
         WHERE t.break_id IN (SELECT break_id FROM evaluation WHERE reevaluation_id = @reevaluationId))
       GROUP BY c.specimen_id) AS b
     WHERE s.specimen_id = b.specimen_id`,
  ).run({ reevaluationId })
  prepared(
    database,
    `UPDATE specimen_current SET peak_n = NULL, break_in_force = NULL, started_at = NULL, wood_failure_percent = NULL
     WHERE break_in_force IN (SELECT break_id FROM evaluation WHERE reevaluation_id = ?) AND NOT EXISTS (SELECT 1 FROM break_current b
       WHERE b.specimen_id = specimen_current.specimen_id AND b.outcome = 'break' AND b.set_aside IS NULL)`,
  ).run(reevaluationId)
  // An overruled peak is a reading under the scale in force, which is no business of SQL; there are few of them.
  for (const row of rows) if (row.peak_decision_id !== null) refreshBreak(database, row.break_id)
  for (const { break_id } of rows) touch(database, `break ${break_id}`, `result ${break_id}`, `curve ${break_id}`)
  const specimenIds = new Set(rows.map((row) => row.specimen_id).filter((id) => id !== null))
  for (const specimenId of specimenIds) touch(database, `specimen ${specimenId}`)
  return { breakIds: rows.map((row) => row.break_id), specimenIds: [...specimenIds] }
}
