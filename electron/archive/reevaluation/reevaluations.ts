import type Database from 'better-sqlite3'
import type { NewEvaluation } from '#contract/breaks/evaluation.ts'
import {
  type Reevaluation,
  type ReevaluationDecision,
  type ReevaluationEnd,
  type ReevaluationSummary,
  reevaluation,
  reevaluationEnd,
  reevaluationSummary,
} from '#contract/reevaluation/reevaluation.ts'
import { storeEvaluation } from '../breaks/evaluations.ts'
import { calibration } from '../calibration/calibrations.ts'
import { canonicalJson } from '../core/canonicalJson.ts'
import { addLedgeredRow } from '../core/ledgeredRow.ts'
import { prepared } from '../core/prepared.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { refreshReevaluated } from './refreshReevaluated.ts'

type ReevaluationRow = {
  reevaluation_id: number
  begun_at: string
  by: string
  method: string
  calibration_id: number | null
  settings: string
  break_ids: string
}

type EndRow = { reevaluation_id: number; ended_at: string; ending: string; problems: string }

type DecisionRow = {
  reevaluation_decision_id: number
  reevaluation_id: number
  recorded_at: string
  by: string
  reason: string
  kind: string
}

function plainDecision(row: DecisionRow) {
  return {
    reevaluationDecisionId: row.reevaluation_decision_id,
    reevaluationId: row.reevaluation_id,
    recordedAt: row.recorded_at,
    by: row.by,
    reason: row.reason,
    kind: row.kind,
  }
}

/** What the ledger holds of a re-evaluation: just what is stored. */
export function reevaluationContent(database: Database.Database, reevaluationId: number): unknown {
  const row = prepared<ReevaluationRow>(database, 'SELECT * FROM reevaluation WHERE reevaluation_id = ?').get(
    reevaluationId,
  )
  if (row === undefined) throw notFound('re-evaluation', reevaluationId)
  return {
    reevaluationId,
    begunAt: row.begun_at,
    by: row.by,
    method: row.method,
    calibrationId: row.calibration_id,
    settings: JSON.parse(row.settings),
    breakIds: JSON.parse(row.break_ids),
  }
}

/** What the ledger holds of the end of a re-evaluation: just what is stored. */
export function reevaluationEndContent(database: Database.Database, reevaluationId: number): unknown {
  const row = prepared<EndRow>(database, 'SELECT * FROM reevaluation_end WHERE reevaluation_id = ?').get(reevaluationId)
  if (row === undefined) throw notFound('end of a re-evaluation', reevaluationId)
  return { reevaluationId, endedAt: row.ended_at, ending: row.ending, problems: JSON.parse(row.problems) }
}

/** What the ledger holds of a decision on a re-evaluation: just what is stored. */
export function reevaluationDecisionContent(database: Database.Database, decisionId: number): unknown {
  const row = prepared<DecisionRow>(
    database,
    'SELECT * FROM reevaluation_decision WHERE reevaluation_decision_id = ?',
  ).get(decisionId)
  if (row === undefined) throw notFound('decision on a re-evaluation', decisionId)
  return plainDecision(row)
}

/** A re-evaluation as it was begun. */
export function readReevaluation(database: Database.Database, reevaluationId: number): Reevaluation {
  return reevaluation.parse(reevaluationContent(database, reevaluationId))
}

/** How it ended; null while it runs. */
export function readReevaluationEnd(database: Database.Database, reevaluationId: number): ReevaluationEnd | null {
  const ended = prepared(database, 'SELECT 1 FROM reevaluation_end WHERE reevaluation_id = ?').get(reevaluationId)
  return ended === undefined ? null : reevaluationEnd.parse(reevaluationEndContent(database, reevaluationId))
}

/** A re-evaluation as lists show it. */
export function reevaluationOf(database: Database.Database, reevaluationId: number): ReevaluationSummary {
  const { breakIds, ...begun } = readReevaluation(database, reevaluationId)
  const { evaluated } = prepared<{ evaluated: number }>(
    database,
    'SELECT count(*) AS evaluated FROM evaluation WHERE reevaluation_id = ?',
  ).get(reevaluationId)!
  const decisions = prepared<DecisionRow>(
    database,
    'SELECT * FROM reevaluation_decision WHERE reevaluation_id = ? ORDER BY reevaluation_decision_id',
  ).all(reevaluationId)
  return reevaluationSummary.parse({
    ...begun,
    breaks: breakIds.length,
    evaluated,
    end: readReevaluationEnd(database, reevaluationId),
    decisions: decisions.map(plainDecision),
  })
}

/** Every re-evaluation, newest first. */
export function reevaluations(database: Database.Database): ReevaluationSummary[] {
  return prepared<{ reevaluation_id: number }>(
    database,
    'SELECT reevaluation_id FROM reevaluation ORDER BY reevaluation_id DESC',
  )
    .all()
    .map((row) => reevaluationOf(database, row.reevaluation_id))
}

/** Stores what is known before the first result. */
export function beginReevaluation(
  database: Database.Database,
  begun: Omit<Reevaluation, 'reevaluationId'>,
): ReevaluationSummary {
  const row = {
    kind: 'reevaluation',
    recordedAt: begun.begunAt,
    sql: `INSERT INTO reevaluation (begun_at, by, method, calibration_id, settings, break_ids)
          VALUES (@begunAt, @by, @method, @calibrationId, @settings, @breakIds)`,
    values: { ...begun, settings: canonicalJson(begun.settings), breakIds: canonicalJson(begun.breakIds) },
    content: reevaluationContent,
  } as const
  const { id } = addLedgeredRow(database, row, {
    before() {
      if (begun.calibrationId !== null) calibration(database, begun.calibrationId)
      refuseMissing(database, begun.breakIds)
    },
    after: (reevaluationId) => touch(database, `reevaluation ${reevaluationId}`),
  })
  return reevaluationOf(database, id)
}

function refuseMissing(database: Database.Database, breakIds: readonly number[]): void {
  const missing = prepared<{ id: number }>(
    database,
    'SELECT value AS id FROM json_each(?) WHERE value NOT IN (SELECT break_id FROM break_header) LIMIT 1',
  ).get(canonicalJson(breakIds))
  if (missing !== undefined) throw notFound('break', missing.id)
}

/**
 * Lays some results of a running re-evaluation beside the older ones; none is in force until all are adopted. What they
 * touch is told when it ends: asking again for every batch would keep the samples of a running capture from the disk.
 */
export function addReevaluated(
  database: Database.Database,
  reevaluationId: number,
  made: readonly NewEvaluation[],
): void {
  database
    .transaction(() => {
      refuseEnded(database, reevaluationId)
      for (const one of made) {
        if ((one.besideId ?? null) === null)
          throw new RangeError('addReevaluated requires what each result stands beside')
        storeEvaluation(database, { ...one, reevaluationId })
      }
    })
    .immediate()
}

function refuseEnded(database: Database.Database, reevaluationId: number): void {
  reevaluationContent(database, reevaluationId)
  if (readReevaluationEnd(database, reevaluationId) !== null)
    throw conflict(`Re-evaluation ${reevaluationId} has ended.`, 'Begin a new one.')
}

/** Notes how a re-evaluation ended; it takes no more results. */
export function endReevaluation(database: Database.Database, end: ReevaluationEnd): ReevaluationSummary {
  const row = {
    kind: 'reevaluation-end',
    recordedAt: end.endedAt,
    sql: `INSERT INTO reevaluation_end (reevaluation_id, ended_at, ending, problems)
          VALUES (@reevaluationId, @endedAt, @ending, @problems)`,
    values: { ...end, problems: canonicalJson(end.problems) },
    content: reevaluationEndContent,
  } as const
  addLedgeredRow(database, row, {
    before: () => refuseEnded(database, end.reevaluationId),
    after: () => touchResults(database, end.reevaluationId),
  })
  return reevaluationOf(database, end.reevaluationId)
}

/** A break's record holds the results of every re-evaluation. */
function touchResults(database: Database.Database, reevaluationId: number): void {
  touch(database, `reevaluation ${reevaluationId}`)
  const results = prepared<{ break_id: number }>(database, 'SELECT break_id FROM evaluation WHERE reevaluation_id = ?')
  for (const { break_id } of results.all(reevaluationId)) touch(database, `break ${break_id}`)
}

/** A decision before the archive has numbered it. */
export type NewReevaluationDecision = Omit<ReevaluationDecision, 'reevaluationDecisionId'>

/** What a decision on a re-evaluation touched. */
export type DecidedReevaluation = { summary: ReevaluationSummary; breakIds: number[]; specimenIds: number[] }

/** Puts all results of a re-evaluation in force, or takes them out again: one decision, all of it or nothing. */
export function decideReevaluation(database: Database.Database, made: NewReevaluationDecision): DecidedReevaluation {
  const { reevaluationId } = made
  let touched = { breakIds: [] as number[], specimenIds: [] as number[] }
  const row = {
    kind: 'reevaluation-decision',
    recordedAt: made.recordedAt,
    sql: `INSERT INTO reevaluation_decision (reevaluation_id, recorded_at, by, reason, kind)
          VALUES (@reevaluationId, @recordedAt, @by, @reason, @kind)`,
    values: made,
    content: reevaluationDecisionContent,
  } as const
  addLedgeredRow(database, row, {
    before: () => refuseDecision(reevaluationOf(database, reevaluationId), made.kind),
    after() {
      touched = refreshReevaluated(database, reevaluationId)
      touch(database, `reevaluation ${reevaluationId}`)
    },
  })
  return { summary: reevaluationOf(database, reevaluationId), ...touched }
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
export function endCutShort(database: Database.Database, endedAt: string): void {
  const left = prepared<{ reevaluation_id: number }>(
    database,
    'SELECT reevaluation_id FROM reevaluation WHERE reevaluation_id NOT IN (SELECT reevaluation_id FROM reevaluation_end)',
  ).all()
  for (const { reevaluation_id: reevaluationId } of left)
    endReevaluation(database, { reevaluationId, endedAt, ending: 'cut-short', problems: [] })
}
