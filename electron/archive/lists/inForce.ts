import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'

/**
 * Numbers of the evaluations of one break that count or have counted, the one in force first; put the break's number where
 * `breakId` stands. An evaluation counts from its own entry in the ledger; one of a re-evaluation from the entry of the
 * newest decision on that re-evaluation, and only where that decision adopts it. Whatever was put in force last is in force.
 */
export const standingText = (breakId: string) => `
  SELECT e.evaluation_id FROM evaluation e
  LEFT JOIN reevaluation_decision d ON d.reevaluation_decision_id =
    (SELECT max(reevaluation_decision_id) FROM reevaluation_decision WHERE reevaluation_id = e.reevaluation_id)
  JOIN ledger l ON l.kind = CASE WHEN e.reevaluation_id IS NULL THEN 'evaluation' ELSE 'reevaluation-decision' END
    AND l.record_id = CASE WHEN e.reevaluation_id IS NULL THEN e.evaluation_id ELSE d.reevaluation_decision_id END
  WHERE e.break_id = ${breakId} AND (e.reevaluation_id IS NULL OR d.kind = 'adopted')
  ORDER BY l.seq DESC`

/** The evaluation of a break that is in force; null: there is none yet. */
export function evaluationInForce(database: Database, breakId: number): number | null {
  const row = prepared<{ evaluation_id: number }>(database, `${standingText('?')} LIMIT 1`).get(breakId)
  return row?.evaluation_id ?? null
}
