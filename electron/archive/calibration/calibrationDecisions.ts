import type Database from 'better-sqlite3'
import { type CalibrationDecision, calibrationDecision } from '#contract/calibration/calibrationRecords.ts'
import { addLedgeredRow } from '../core/ledgeredRow.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { calibration } from './calibrations.ts'

type DecisionRow = {
  calibration_decision_id: number
  recorded_at: string
  by: string
  reason: string
  calibration_id: number | null
}

function plainDecision(row: DecisionRow): CalibrationDecision {
  return {
    calibrationDecisionId: row.calibration_decision_id,
    recordedAt: row.recorded_at,
    by: row.by,
    reason: row.reason,
    calibrationId: row.calibration_id,
  }
}

/** What the ledger holds of a decision on the calibration in force: just what is stored. */
export function calibrationDecisionContent(database: Database.Database, decisionId: number): CalibrationDecision {
  const row = prepared<DecisionRow>(
    database,
    'SELECT * FROM calibration_decision WHERE calibration_decision_id = ?',
  ).get(decisionId)
  if (row === undefined) throw notFound('decision on a calibration', decisionId)
  return plainDecision(row)
}

/** Puts a calibration in force from now on, or none. */
export function addCalibrationDecision(
  database: Database.Database,
  made: Omit<CalibrationDecision, 'calibrationDecisionId'>,
): CalibrationDecision {
  const { calibrationId } = made
  const row = {
    kind: 'calibration-decision',
    recordedAt: made.recordedAt,
    sql: `INSERT INTO calibration_decision (recorded_at, by, reason, calibration_id)
          VALUES (@recordedAt, @by, @reason, @calibrationId)`,
    values: made,
    content: calibrationDecisionContent,
  } as const
  // Of each it can be said whether it is in force.
  const after = () => touch(database, 'calibrations')
  const before = () => void (calibrationId === null || calibration(database, calibrationId))
  return calibrationDecision.parse(addLedgeredRow(database, row, { before, after }).content)
}

/** Every decision, oldest first; the last says what is in force. */
export function calibrationDecisions(database: Database.Database): CalibrationDecision[] {
  return prepared<DecisionRow>(database, 'SELECT * FROM calibration_decision ORDER BY calibration_decision_id')
    .all()
    .map(plainDecision)
}
