import { type CalibrationDecision, calibrationDecision } from '#contract/calibration/calibrationRecords.ts'
import { plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numbered } from '../core/recordTable.ts'
import { inTransaction } from '../core/transaction.ts'
import { type ReadableRows, readableRecords } from '../lists/readableRows.ts'
import { requireStored } from '../lists/stored.ts'

/** A person's word on which calibration is in force. */
export const calibrationDecisionKind = recordKind({
  name: 'calibration-decision',
  noun: 'decision on a calibration',
  table: 'calibration_decision',
  identity: numbered('calibrationDecisionId'),
  instant: 'recordedAt',
  schema: calibrationDecision,
  columns: { recordedAt: plain, by: plain, reason: plain, calibrationId: plain },
  // Of each it can be said whether it is in force.
  topics: () => ['calibrations'],
})

/** Puts a calibration in force from now on, or none. */
export function addCalibrationDecision(
  database: Database,
  made: Omit<CalibrationDecision, 'calibrationDecisionId'>,
): CalibrationDecision {
  return inTransaction(database, () => {
    if (made.calibrationId !== null) requireStored(database, 'calibration', made.calibrationId)
    return storeRecord(database, calibrationDecisionKind, made)
  })
}

/** Every decision that can be read, oldest first. */
export function calibrationDecisions(database: Database): ReadableRows<CalibrationDecision> {
  return readableRecords(database, calibrationDecisionKind, 'ORDER BY calibration_decision_id')
}

/** The calibration that the newest decision put in force, whatever else of that decision can be read; null: none. */
export function calibrationDecided(database: Database): number | null {
  const newest = prepared<{ calibration_id: number | null }>(
    database,
    'SELECT calibration_id FROM calibration_decision ORDER BY calibration_decision_id DESC LIMIT 1',
  ).get()
  return newest?.calibration_id ?? null
}
