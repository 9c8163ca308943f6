import type { Calibration } from '#contract/calibration/calibration.ts'
import { calibrationOfRoutine } from '#contract/calibration/routineRecords.ts'
import { json, plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numbered, readRecord } from '../core/recordTable.ts'
import { inTransaction } from '../core/transaction.ts'
import { type ReadableRows, readableRows } from '../lists/readableRows.ts'
import { requireStored } from '../lists/stored.ts'
import { refuseOver } from './calibrationRoutines.ts'

/** A calibration with every reading, and the routine that they come from. */
export const calibrationKind = recordKind({
  name: 'calibration',
  noun: 'calibration',
  table: 'calibration',
  identity: numbered('calibrationId'),
  instant: 'madeAt',
  schema: calibrationOfRoutine,
  columns: {
    routineId: plain,
    name: plain,
    madeAt: plain,
    by: plain,
    supersedes: plain,
    dueOn: plain,
    source: plain,
    device: plain,
    readingUnit: plain,
    circumstances: json,
    weights: json,
    readings: json,
    rows: json,
    creep: json,
    assessment: json,
    note: plain,
  },
  topics: ({ calibrationId, routineId }) =>
    routineId === null ? [`calibration ${calibrationId}`] : [`calibration ${calibrationId}`, `routine ${routineId}`],
})

/** A calibration as it stands in the file now: what `verify` looks at. */
export function storedCalibration(database: Database, calibrationId: number): Calibration {
  const { routineId: _routineId, ...stored } = readRecord(database, calibrationKind, calibrationId)
  return stored
}

// A calibration is never changed, so it is parsed once for each connection.
const known = new WeakMap<Database, Map<number, Calibration>>()

/** A calibration with every reading. Throws the trouble "not-found" when there is none. */
export function calibration(database: Database, calibrationId: number): Calibration {
  const ofDatabase = known.get(database) ?? new Map<number, Calibration>()
  known.set(database, ofDatabase)
  const found = ofDatabase.get(calibrationId)
  if (found !== undefined) return found
  const parsed = storedCalibration(database, calibrationId)
  ofDatabase.set(calibrationId, parsed)
  return parsed
}

/** Every calibration that can be read, newest first. */
export function calibrations(database: Database): ReadableRows<Calibration> {
  const ids = prepared<{ calibration_id: number }>(
    database,
    'SELECT calibration_id FROM calibration ORDER BY calibration_id DESC',
  )
    .all()
    .map((row) => row.calibration_id)
  return readableRows(calibrationKind.noun, ids, (id) => calibration(database, id))
}

/** Stores a calibration; `routineId` names the routine that its readings come from, null for those of a file. */
export function addCalibration(
  database: Database,
  made: Omit<Calibration, 'calibrationId'>,
  routineId: number | null,
): Calibration {
  return inTransaction(database, () => {
    if (made.supersedes !== null) requireStored(database, 'calibration', made.supersedes)
    if (routineId !== null) refuseOver(database, routineId)
    const { routineId: _routineId, ...stored } = storeRecord(database, calibrationKind, { ...made, routineId })
    return stored
  })
}
