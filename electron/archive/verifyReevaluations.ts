import type Database from 'better-sqlite3'
import type { Report } from './fault.ts'
import { prepared } from './prepared.ts'
import { readReevaluation, readReevaluationEnd } from './reevaluations.ts'

/** Holds the results of each re-evaluation against the breaks that it was begun for, and its decisions against its end. */
export function verifyReevaluations(database: Database.Database, report: Report): void {
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
    const decided = prepared(database, 'SELECT 1 FROM reevaluation_decision WHERE reevaluation_id = ?').get(
      reevaluationId,
    )
    if (end === null && decided !== undefined) report({ where, what: 'it was decided on before it had ended' })
  }
}

function resultsOf(database: Database.Database, reevaluationId: number) {
  return prepared<{ break_id: number; beside_break_id: number | null }>(
    database,
    `SELECT n.break_id, b.break_id AS beside_break_id FROM evaluation n
     LEFT JOIN evaluation b ON b.evaluation_id = n.beside_id WHERE n.reevaluation_id = ? ORDER BY n.break_id`,
  ).all(reevaluationId)
}
