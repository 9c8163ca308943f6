import type Database from 'better-sqlite3'
import { type Decision, decision } from '#contract/records/break.ts'
import { readHeader } from './breaks.ts'
import { refreshBreak } from './current.ts'
import { appendLedger } from './ledger.ts'
import { prepared } from './prepared.ts'
import { specimenRevisions } from './specimens.ts'

export type DecisionRow = {
  decision_id: number
  break_id: number
  recorded_at: string
  by: string
  reason: string
  kind: string
  specimen_id: number | null
}

/** A decision as the contract has it. */
export function decisionFromRow(row: DecisionRow): Decision {
  return decision.parse({
    decisionId: row.decision_id,
    breakId: row.break_id,
    recordedAt: row.recorded_at,
    by: row.by,
    reason: row.reason,
    kind: row.kind,
    specimenId: row.specimen_id,
  })
}

/** Records a person's word on a break; the newest of its kind decides. */
export function addDecision(database: Database.Database, made: Omit<Decision, 'decisionId'>): Decision {
  return database
    .transaction(() => {
      readHeader(database, made.breakId)
      if (made.kind !== 'reassigned' && made.specimenId !== null)
        throw new RangeError('addDecision takes a specimen only when a break is reassigned')
      if (made.specimenId !== null) specimenRevisions(database, made.specimenId)
      const { lastInsertRowid } = prepared(
        database,
        `INSERT INTO decision (break_id, recorded_at, by, reason, kind, specimen_id)
         VALUES (@breakId, @recordedAt, @by, @reason, @kind, @specimenId)`,
      ).run(made)
      const stored = { ...made, decisionId: Number(lastInsertRowid) }
      appendLedger(database, 'decision', stored.decisionId, made.recordedAt, stored)
      refreshBreak(database, made.breakId)
      return stored
    })
    .immediate()
}

/** Every decision on a break, newest last. */
export function decisionsOf(database: Database.Database, breakId: number): Decision[] {
  return prepared<DecisionRow>(database, 'SELECT * FROM decision WHERE break_id = ? ORDER BY decision_id')
    .all(breakId)
    .map(decisionFromRow)
}
