// Held by tests/archive/lists/summaries.spec.ts.
import { type Evaluation, evaluation, type NewEvaluation } from '#contract/breaks/evaluation.ts'
import { absent, json, plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numbered, readRecords } from '../core/recordTable.ts'
import { inTransaction } from '../core/transaction.ts'
import { refreshBreak } from '../lists/refresh.ts'
import { readHeader } from './breakHeaders.ts'

/** What one method with one set of thresholds makes of a curve. */
export const evaluationKind = recordKind({
  name: 'evaluation',
  noun: 'evaluation',
  table: 'evaluation',
  identity: numbered('evaluationId'),
  instant: 'madeAt',
  schema: evaluation,
  columns: {
    breakId: plain,
    madeAt: plain,
    method: plain,
    settings: json,
    scale: json,
    tareOffset: plain,
    result: {
      outcome: plain,
      peakN: plain,
      peakTimeS: plain,
      onsetTimeS: plain,
      breakTimeS: plain,
      sampleRateHz: plain,
      samples: plain,
      missingSamples: plain,
      noiseN: plain,
      loadingRateNPerS: plain,
      samplingBoundN: plain,
      samplingBoundPercent: plain,
      afterBreakN: plain,
      flags: json,
      events: json,
      course: absent(json),
    },
    reevaluationId: absent(plain),
    besideId: absent(plain),
  },
})

/** Stores an evaluation; whoever calls it brings the current row of its break up to date. Call it inside a transaction. */
export function storeEvaluation(database: Database, made: NewEvaluation): Evaluation {
  return storeRecord(database, evaluationKind, made)
}

/** Lays an evaluation beside the older ones of its break; it is in force from now on. Those of a re-evaluation go another way. */
export function addEvaluation(database: Database, made: NewEvaluation): Evaluation {
  if ((made.reevaluationId ?? null) !== null) throw new RangeError('addEvaluation takes no result of a re-evaluation')
  return inTransaction(database, () => {
    readHeader(database, made.breakId)
    const stored = storeEvaluation(database, made)
    refreshBreak(database, made.breakId)
    return stored
  })
}

/** Every evaluation of a break, newest last. */
export function evaluationsOf(database: Database, breakId: number): Evaluation[] {
  return readRecords(database, evaluationKind, 'WHERE break_id = ? ORDER BY evaluation_id', breakId)
}
