import type Database from 'better-sqlite3'
import { type Calibration, calibration as schema } from '#contract/calibration/calibration.ts'
import { canonicalJson } from '../core/canonicalJson.ts'
import { addLedgeredRow } from '../core/ledgeredRow.ts'
import { prepared } from '../core/prepared.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'

type CalibrationRow = {
  calibration_id: number
  routine_id: number | null
  name: string
  made_at: string
  by: string
  supersedes: number | null
  due_on: string | null
  source: string
  device: string
  reading_unit: string
  circumstances: string | null
  weights: string
  readings: string
  rows: string
  creep: string
  assessment: string
  note: string
}

function plainCalibration(row: CalibrationRow) {
  return {
    calibrationId: row.calibration_id,
    name: row.name,
    madeAt: row.made_at,
    by: row.by,
    supersedes: row.supersedes,
    dueOn: row.due_on,
    source: row.source,
    device: row.device,
    readingUnit: row.reading_unit,
    circumstances: row.circumstances === null ? null : JSON.parse(row.circumstances),
    weights: JSON.parse(row.weights),
    readings: JSON.parse(row.readings),
    rows: JSON.parse(row.rows),
    creep: JSON.parse(row.creep),
    assessment: JSON.parse(row.assessment),
    note: row.note,
  }
}

function calibrationRow(database: Database.Database, calibrationId: number): CalibrationRow {
  const row = prepared<CalibrationRow>(database, 'SELECT * FROM calibration WHERE calibration_id = ?').get(
    calibrationId,
  )
  if (row === undefined) throw notFound('calibration', calibrationId)
  return row
}

/** What the ledger holds of a calibration: just what is stored, with the routine that its readings come from. */
export function calibrationContent(database: Database.Database, calibrationId: number): unknown {
  const row = calibrationRow(database, calibrationId)
  return { ...plainCalibration(row), routineId: row.routine_id }
}

/** A calibration as it stands in the file now: what `verify` looks at. */
export function storedCalibration(database: Database.Database, calibrationId: number): Calibration {
  return schema.parse(plainCalibration(calibrationRow(database, calibrationId)))
}

// A calibration is never changed, so it is parsed once for each connection.
const known = new WeakMap<Database.Database, Map<number, Calibration>>()

/** A calibration with every reading. Throws the trouble "not-found" when there is none. */
export function calibration(database: Database.Database, calibrationId: number): Calibration {
  const ofDatabase = known.get(database) ?? new Map<number, Calibration>()
  known.set(database, ofDatabase)
  const found = ofDatabase.get(calibrationId)
  if (found !== undefined) return found
  const parsed = storedCalibration(database, calibrationId)
  ofDatabase.set(calibrationId, parsed)
  return parsed
}

/** Every calibration, newest first. */
export function calibrations(database: Database.Database): Calibration[] {
  return prepared<{ calibration_id: number }>(
    database,
    'SELECT calibration_id FROM calibration ORDER BY calibration_id DESC',
  )
    .all()
    .map((row) => calibration(database, row.calibration_id))
}

/** Stores a calibration; `routineId` names the routine that its readings come from, null for those of a file. */
export function addCalibration(
  database: Database.Database,
  made: Omit<Calibration, 'calibrationId'>,
  routineId: number | null,
): Calibration {
  const row = {
    kind: 'calibration',
    recordedAt: made.madeAt,
    sql: `INSERT INTO calibration (routine_id, name, made_at, by, supersedes, due_on, source, device, reading_unit,
            circumstances, weights, readings, rows, creep, assessment, note)
          VALUES (@routineId, @name, @madeAt, @by, @supersedes, @dueOn, @source, @device, @readingUnit,
            @circumstances, @weights, @readings, @rows, @creep, @assessment, @note)`,
    values: {
      ...made,
      routineId,
      circumstances: made.circumstances === null ? null : canonicalJson(made.circumstances),
      weights: canonicalJson(made.weights),
      readings: canonicalJson(made.readings),
      rows: canonicalJson(made.rows),
      creep: canonicalJson(made.creep),
      assessment: canonicalJson(made.assessment),
    },
    content: calibrationContent,
  } as const
  const { id } = addLedgeredRow(database, row, {
    before() {
      if (made.supersedes !== null) calibrationRow(database, made.supersedes)
      const over = prepared(database, 'SELECT 1 FROM calibration_routine_end WHERE routine_id = ?').get(routineId)
      if (over !== undefined)
        throw conflict(`Calibration routine ${routineId} was broken off.`, 'Begin a new one; its readings are kept.')
    },
    after(calibrationId) {
      touch(database, `calibration ${calibrationId}`)
      if (routineId !== null) touch(database, `routine ${routineId}`)
    },
  })
  return storedCalibration(database, id)
}
