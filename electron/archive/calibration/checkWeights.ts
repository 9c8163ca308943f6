import { type CheckWeightReading, checkWeightReading } from '#contract/calibration/checkWeight.ts'
import { plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numbered } from '../core/recordTable.ts'
import { inTransaction } from '../core/transaction.ts'
import { type ReadableRows, readableRecords } from '../lists/readableRows.ts'
import { requireStored } from '../lists/stored.ts'

/** A reading of the check weight against what it should be. */
export const checkWeightKind = recordKind({
  name: 'check-weight',
  noun: 'check',
  table: 'check_weight',
  identity: numbered('checkId'),
  instant: 'takenAt',
  schema: checkWeightReading,
  columns: {
    calibrationId: plain,
    takenAt: plain,
    by: plain,
    weight: plain,
    expectedN: plain,
    indicatedN: plain,
    sdN: plain,
    count: plain,
  },
  topics: ({ checkId }) => [`check ${checkId}`],
})

/** Stores a reading of the check weight under a calibration. */
export function addCheckWeight(database: Database, made: Omit<CheckWeightReading, 'checkId'>): CheckWeightReading {
  return inTransaction(database, () => {
    requireStored(database, 'calibration', made.calibrationId)
    return storeRecord(database, checkWeightKind, made)
  })
}

/** Every check under a calibration that can be read, oldest first. */
export function checkWeights(database: Database, calibrationId: number): ReadableRows<CheckWeightReading> {
  return readableRecords(database, checkWeightKind, 'WHERE calibration_id = ? ORDER BY check_id', calibrationId)
}
