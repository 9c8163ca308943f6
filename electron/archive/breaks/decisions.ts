import type Database from 'better-sqlite3'
import { type Decision, decision, type NewDecision } from '#contract/breaks/decision.ts'
import { stillCaptured } from '#domain/strength/breakTroubles.ts'
import { addLedgeredRow } from '../core/ledgeredRow.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { refreshBreak } from '../lists/current.ts'
import { specimenRevisions } from '../specimens/specimens.ts'
import { readEnd, readHeader } from './breakHeaders.ts'

type DecisionRow = {
  decision_id: number
  break_id: number
  recorded_at: string
  by: string
  reason: string
  kind: string
  specimen_id: number | null
  cause: string | null
  sample_time_s: number | null
  sample_reading: number | null
}

/** What the ledger holds of a decision: just what is stored. */
export function decisionContent(database: Database.Database, decisionId: number): unknown {
  const row = prepared<DecisionRow>(database, 'SELECT * FROM decision WHERE decision_id = ?').get(decisionId)
  if (row === undefined) throw notFound('decision', decisionId)
  return plainDecision(row)
}

function plainDecision(row: DecisionRow) {
  return {
    decisionId: row.decision_id,
    breakId: row.break_id,
    recordedAt: row.recorded_at,
    by: row.by,
    reason: row.reason,
    kind: row.kind,
    specimenId: row.specimen_id,
    // Absent where there is none, so that the ledger holds older decisions as they were written.
    ...(row.cause === null ? {} : { cause: row.cause }),
    ...(row.sample_time_s === null ? {} : { sample: { timeS: row.sample_time_s, reading: row.sample_reading } }),
  }
}

/** Records a person's word on a break; the newest of those that speak of the same thing decides. */
export function addDecision(database: Database.Database, made: NewDecision): Decision {
  const row = {
    kind: 'decision',
    recordedAt: made.recordedAt,
    sql: `INSERT INTO decision (break_id, recorded_at, by, reason, kind, specimen_id, cause, sample_time_s, sample_reading)
          VALUES (@breakId, @recordedAt, @by, @reason, @kind, @specimenId, @cause, @sampleTimeS, @sampleReading)`,
    values: {
      ...made,
      cause: made.cause ?? null,
      sampleTimeS: made.sample?.timeS ?? null,
      sampleReading: made.sample?.reading ?? null,
    },
    content: decisionContent,
  } as const
  const stored = addLedgeredRow(database, row, {
    before() {
      readHeader(database, made.breakId)
      const overrules = made.kind === 'peak-picked' || made.kind === 'premature-failure'
      if (overrules !== ((made.sample ?? null) !== null))
        throw new RangeError('addDecision takes a sample where it stands for the peak, and only there')
      if (made.kind !== 'set-aside' && (made.cause ?? null) !== null)
        throw new RangeError('addDecision takes a cause only when a break is set aside')
      if (overrules && readEnd(database, made.breakId) === null) throw stillCaptured(made.breakId)
      if (made.kind !== 'reassigned' && made.specimenId !== null)
        throw new RangeError('addDecision takes a specimen only when a break is reassigned')
      if (made.specimenId !== null) specimenRevisions(database, made.specimenId)
    },
    after: () => refreshBreak(database, made.breakId),
  })
  return decision.parse(stored.content)
}

/** Every decision on a break, newest last. */
export function decisionsOf(database: Database.Database, breakId: number): Decision[] {
  return prepared<DecisionRow>(database, 'SELECT * FROM decision WHERE break_id = ? ORDER BY decision_id')
    .all(breakId)
    .map((row) => decision.parse(plainDecision(row)))
}
