import type { VerifyingCalibration } from '#domain/calibration/verificationOf.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'

type Row = { calibration_id: number; name: string; assessment: string }

// A calibration is never changed, so its JSON is read once for each connection.
const known = new WeakMap<Database, Map<number, VerifyingCalibration>>()

/** What of a calibration a result is held against. Throws the trouble "not-found" when there is none. */
export function verifyingCalibration(database: Database, calibrationId: number): VerifyingCalibration {
  const ofDatabase = known.get(database) ?? new Map<number, VerifyingCalibration>()
  known.set(database, ofDatabase)
  const found = ofDatabase.get(calibrationId)
  if (found !== undefined) return found
  const row = prepared<Row>(
    database,
    'SELECT calibration_id, name, assessment FROM calibration WHERE calibration_id = ?',
  ).get(calibrationId)
  if (row === undefined) throw notFound('calibration', calibrationId)
  const calibration = { calibrationId, name: row.name, assessment: JSON.parse(row.assessment) }
  ofDatabase.set(calibrationId, calibration)
  return calibration
}
