import type Database from 'better-sqlite3'
import { type CheckWeightReading, checkWeightReading } from '#contract/calibration/checkWeight.ts'
import { addLedgeredRow } from '../core/ledgeredRow.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'
import { calibration } from './calibrations.ts'

type CheckRow = {
  check_id: number
  calibration_id: number
  taken_at: string
  by: string
  weight: string
  expected_n: number
  indicated_n: number
  sd_n: number
  count: number
}

function plainCheck(row: CheckRow): CheckWeightReading {
  return {
    checkId: row.check_id,
    calibrationId: row.calibration_id,
    takenAt: row.taken_at,
    by: row.by,
    weight: row.weight,
    expectedN: row.expected_n,
    indicatedN: row.indicated_n,
    sdN: row.sd_n,
    count: row.count,
  }
}

/** What the ledger holds of a check: just what is stored. */
export function checkWeightContent(database: Database.Database, checkId: number): CheckWeightReading {
  const row = prepared<CheckRow>(database, 'SELECT * FROM check_weight WHERE check_id = ?').get(checkId)
  if (row === undefined) throw notFound('check', checkId)
  return plainCheck(row)
}

/** Stores a reading of the check weight under a calibration. */
export function addCheckWeight(
  database: Database.Database,
  made: Omit<CheckWeightReading, 'checkId'>,
): CheckWeightReading {
  const row = {
    kind: 'check-weight',
    recordedAt: made.takenAt,
    sql: `INSERT INTO check_weight (calibration_id, taken_at, by, weight, expected_n, indicated_n, sd_n, count)
          VALUES (@calibrationId, @takenAt, @by, @weight, @expectedN, @indicatedN, @sdN, @count)`,
    values: made,
    content: checkWeightContent,
  } as const
  const before = () => void calibration(database, made.calibrationId)
  const after = (checkId: number) => touch(database, `check ${checkId}`)
  return checkWeightReading.parse(addLedgeredRow(database, row, { before, after }).content)
}

/** Every check under a calibration, oldest first. */
export function checkWeights(database: Database.Database, calibrationId: number): CheckWeightReading[] {
  return prepared<CheckRow>(database, 'SELECT * FROM check_weight WHERE calibration_id = ? ORDER BY check_id')
    .all(calibrationId)
    .map(plainCheck)
}
