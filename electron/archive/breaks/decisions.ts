import { type Decision, decision, type NewDecision, namesPeak } from '#contract/breaks/decision.ts'
import { stillCaptured } from '#domain/strength/breakTroubles.ts'
import { absent, named, plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numbered, readRecords } from '../core/recordTable.ts'
import { inTransaction } from '../core/transaction.ts'
import { refreshBreak } from '../lists/refresh.ts'
import { requireStored } from '../lists/stored.ts'
import { readEnd, readHeader } from './breakHeaders.ts'

/** A person's word on a break. */
export const decisionKind = recordKind({
  name: 'decision',
  noun: 'decision',
  table: 'decision',
  identity: numbered('decisionId'),
  instant: 'recordedAt',
  schema: decision,
  columns: {
    breakId: plain,
    recordedAt: plain,
    by: plain,
    reason: plain,
    kind: plain,
    specimenId: plain,
    cause: absent(plain),
    sample: { timeS: absent(named('sample_time_s')), reading: absent(named('sample_reading')) },
  },
})

/** Records a person's word on a break; the newest of those that speak of the same thing decides. */
export function addDecision(database: Database, made: NewDecision): Decision {
  return inTransaction(database, () => {
    refuse(database, made)
    const stored = storeRecord(database, decisionKind, made)
    refreshBreak(database, made.breakId)
    return stored
  })
}

function refuse(database: Database, made: NewDecision): void {
  readHeader(database, made.breakId)
  if (namesPeak(made.kind) && readEnd(database, made.breakId) === null) throw stillCaptured(made.breakId)
  if (made.kind !== 'reassigned' && made.specimenId !== null)
    throw new RangeError('addDecision takes a specimen only when a break is reassigned')
  if (made.specimenId !== null) requireStored(database, 'specimen', made.specimenId)
}

/** Every decision on a break, newest last. */
export function decisionsOf(database: Database, breakId: number): Decision[] {
  return readRecords(database, decisionKind, 'WHERE break_id = ? ORDER BY decision_id', breakId)
}
