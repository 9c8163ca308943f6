import type { Database } from '../core/database.ts'
import type { Report } from '../core/fault.ts'
import { prepared } from '../core/prepared.ts'
import { readReevaluation, readReevaluationEnd } from '../reevaluation/reevaluations.ts'

/** Holds the results of each re-evaluation against the breaks that it was begun for, and them and its decisions against its end. */
export function verifyReevaluations(database: Database, report: Report): void {
  const ids = prepared<{ reevaluation_id: number }>(
    database,
    'SELECT reevaluation_id FROM reevaluation ORDER BY reevaluation_id',
  ).all()
  for (const { reevaluation_id: reevaluationId } of ids) {
    const where = `re-evaluation ${reevaluationId}`
    const { breakIds } = readReevaluation(database, reevaluationId)
    const end = readReevaluationEnd(database, reevaluationId)
    const wanted = new Set(breakIds)
    const accounted = new Set(end?.problems.map(({ breakId }) => breakId) ?? [])
    for (const row of resultsOf(database, reevaluationId)) {
      accounted.add(row.break_id)
      if (!wanted.has(row.break_id))
        report({ where, what: `it holds a result of break ${row.break_id}, for which it was not begun` })
      if (row.beside_break_id !== row.break_id)
        report({ where, what: `its result of break ${row.break_id} stands beside none of that break` })
    }
    if (end?.ending === 'complete')
      for (const breakId of breakIds)
        if (!accounted.has(breakId)) report({ where, what: `it is complete, but has no result of break ${breakId}` })
    if (end !== null)
      for (const breakId of resultsAfterEnd(database, reevaluationId))
        report({ where, what: `its result of break ${breakId} was entered after it had ended` })
    if (decidedBeforeEnd(database, reevaluationId)) report({ where, what: 'it was decided on before it had ended' })
  }
}

function resultsOf(database: Database, reevaluationId: number) {
  return prepared<{ break_id: number; beside_break_id: number | null }>(
    database,
    `SELECT n.break_id, b.break_id AS beside_break_id FROM evaluation n
     LEFT JOIN evaluation b ON b.evaluation_id = n.beside_id WHERE n.reevaluation_id = ? ORDER BY n.break_id`,
  ).all(reevaluationId)
}

/** The place of its end in the ledger, the one clock that nobody can set; NULL where it has none. */
const endSeq = `(SELECT x.seq FROM ledger x JOIN reevaluation_end r ON r.reevaluation_id = x.record_id
  WHERE x.kind = 'reevaluation-end' AND x.record_id = @reevaluationId)`

function resultsAfterEnd(database: Database, reevaluationId: number): number[] {
  return prepared<{ break_id: number }>(
    database,
    `SELECT e.break_id FROM evaluation e JOIN ledger l ON l.kind = 'evaluation' AND l.record_id = e.evaluation_id
     WHERE e.reevaluation_id = @reevaluationId AND l.seq > ${endSeq} ORDER BY e.break_id`,
  )
    .all({ reevaluationId })
    .map((row) => row.break_id)
}

function decidedBeforeEnd(database: Database, reevaluationId: number): boolean {
  const early = prepared(
    database,
    `SELECT 1 FROM reevaluation_decision d
     JOIN ledger l ON l.kind = 'reevaluation-decision' AND l.record_id = d.reevaluation_decision_id
     WHERE d.reevaluation_id = @reevaluationId AND l.seq < coalesce(${endSeq}, l.seq + 1) LIMIT 1`,
  ).get({ reevaluationId })
  return early !== undefined
}
