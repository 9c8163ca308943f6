import type { NewEvaluation } from '#contract/breaks/evaluation.ts'
import {
  type Reevaluation,
  type ReevaluationDecision,
  type ReevaluationEnd,
  type ReevaluationSummary,
  reevaluationSummary,
} from '#contract/reevaluation/reevaluation.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { storeRecord } from '../core/recordKind.ts'
import { findRecord, readRecord, readRecords } from '../core/recordTable.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { inTransaction } from '../core/transaction.ts'
import { type ReadableRows, readableRows } from '../lists/readableRows.ts'
import { type Refreshed, refreshBreaks } from '../lists/refresh.ts'
import { requireStored } from '../lists/stored.ts'
import { reevaluationDecisionKind, reevaluationEndKind, reevaluationKind } from './reevaluationKinds.ts'

/** A re-evaluation as it was begun. Throws the trouble "not-found" when there is none. */
export function readReevaluation(database: Database, reevaluationId: number): Reevaluation {
  return readRecord(database, reevaluationKind, reevaluationId)
}

/** How it ended; null while it runs. */
export function readReevaluationEnd(database: Database, reevaluationId: number): ReevaluationEnd | null {
  return findRecord(database, reevaluationEndKind, reevaluationId)
}

/** A re-evaluation as lists show it. */
export function reevaluationOf(database: Database, reevaluationId: number): ReevaluationSummary {
  const { breakIds, ...begun } = readReevaluation(database, reevaluationId)
  return reevaluationSummary.parse({
    ...begun,
    breaks: breakIds.length,
    evaluated: evaluatedBreaks(database, reevaluationId).length,
    end: readReevaluationEnd(database, reevaluationId),
    decisions: readRecords(
      database,
      reevaluationDecisionKind,
      'WHERE reevaluation_id = ? ORDER BY reevaluation_decision_id',
      reevaluationId,
    ),
  })
}

/** The breaks of which it holds a result. */
function evaluatedBreaks(database: Database, reevaluationId: number): number[] {
  return prepared<{ break_id: number }>(
    database,
    'SELECT break_id FROM evaluation WHERE reevaluation_id = ? ORDER BY break_id',
  )
    .all(reevaluationId)
    .map((row) => row.break_id)
}

/** Every re-evaluation that can be read, newest first. */
export function reevaluations(database: Database): ReadableRows<ReevaluationSummary> {
  const ids = prepared<{ reevaluation_id: number }>(
    database,
    'SELECT reevaluation_id FROM reevaluation ORDER BY reevaluation_id DESC',
  )
    .all()
    .map((row) => row.reevaluation_id)
  return readableRows(reevaluationKind.noun, ids, (id) => reevaluationOf(database, id))
}

/** Stores what is known before the first result. */
export function beginReevaluation(
  database: Database,
  begun: Omit<Reevaluation, 'reevaluationId'>,
): ReevaluationSummary {
  return inTransaction(database, () => {
    if (begun.calibrationId !== null) requireStored(database, 'calibration', begun.calibrationId)
    refuseMissing(database, begun.breakIds)
    const { reevaluationId } = storeRecord(database, reevaluationKind, begun)
    return reevaluationOf(database, reevaluationId)
  })
}

function refuseMissing(database: Database, breakIds: readonly number[]): void {
  const missing = prepared<{ id: number }>(
    database,
    'SELECT value AS id FROM json_each(?) WHERE value NOT IN (SELECT break_id FROM break_header) LIMIT 1',
  ).get(JSON.stringify(breakIds))
  if (missing !== undefined) throw notFound('break', missing.id)
}

/**
 * Lays some results of a running re-evaluation beside the older ones; none is in force until all are adopted. Whoever owns the
 * evaluations of breaks gives `store`. What they touch is told when the re-evaluation ends: asking again for every batch
 * would keep the samples of a running capture from the disk.
 */
export function addReevaluated(
  database: Database,
  reevaluationId: number,
  made: readonly NewEvaluation[],
  store: (database: Database, evaluation: NewEvaluation) => void,
): void {
  inTransaction(database, () => {
    refuseEnded(database, reevaluationId)
    for (const one of made) {
      if ((one.besideId ?? null) === null)
        throw new RangeError('addReevaluated requires what each result stands beside')
      store(database, { ...one, reevaluationId })
    }
  })
}

function refuseEnded(database: Database, reevaluationId: number): void {
  readReevaluation(database, reevaluationId)
  if (readReevaluationEnd(database, reevaluationId) !== null)
    throw conflict(`Re-evaluation ${reevaluationId} has ended.`, 'Begin a new one.')
}

/** Notes how a re-evaluation ended; it takes no more results. */
export function endReevaluation(database: Database, end: ReevaluationEnd): ReevaluationSummary {
  const { reevaluationId } = end
  return inTransaction(database, () => {
    refuseEnded(database, reevaluationId)
    storeRecord(database, reevaluationEndKind, end)
    // A break's record holds the results of every re-evaluation.
    for (const breakId of evaluatedBreaks(database, reevaluationId)) touch(database, `break ${breakId}`)
    return reevaluationOf(database, reevaluationId)
  })
}

/** A decision before the archive has numbered it. */
export type NewReevaluationDecision = Omit<ReevaluationDecision, 'reevaluationDecisionId'>

/** What a decision on a re-evaluation touched. */
export type DecidedReevaluation = { summary: ReevaluationSummary } & Refreshed

/** Puts all results of a re-evaluation in force, or takes them out again: one decision, all of it or nothing. */
export function decideReevaluation(database: Database, made: NewReevaluationDecision): DecidedReevaluation {
  const { reevaluationId } = made
  return inTransaction(database, () => {
    refuseDecision(reevaluationOf(database, reevaluationId), made.kind)
    storeRecord(database, reevaluationDecisionKind, made)
    const refreshed = refreshBreaks(database, evaluatedBreaks(database, reevaluationId))
    return { summary: reevaluationOf(database, reevaluationId), ...refreshed }
  })
}

function refuseDecision(summary: ReevaluationSummary, kind: ReevaluationDecision['kind']): void {
  const name = `Re-evaluation ${summary.reevaluationId}`
  if (summary.end === null) throw conflict(`${name} is still running.`, 'Wait until it is done, or stop it first.')
  if (summary.evaluated === 0) throw conflict(`${name} has no results.`, 'Begin a new one.')
  // That results were looked at and left is a decision too; only saying it twice says nothing.
  const dropped = summary.decisions.at(-1)?.kind === 'dropped'
  if (kind === 'dropped' && dropped) throw conflict(`${name} is not in force.`, 'Adopt it first; nothing was changed.')
}

/** Ends every re-evaluation that a crash left running. Only the holder of the program lock may call it. */
export function endCutShort(database: Database, endedAt: string): void {
  const left = prepared<{ reevaluation_id: number }>(
    database,
    'SELECT reevaluation_id FROM reevaluation WHERE reevaluation_id NOT IN (SELECT reevaluation_id FROM reevaluation_end)',
  ).all()
  for (const { reevaluation_id: reevaluationId } of left)
    endReevaluation(database, { reevaluationId, endedAt, ending: 'cut-short', problems: [] })
}
