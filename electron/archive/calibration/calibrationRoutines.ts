import type Database from 'better-sqlite3'
import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import { type BrokenOffRoutine, brokenOffRoutine } from '#contract/calibration/calibrationRoutine.ts'
import type { CalibrationReading } from '#contract/calibration/reading.ts'
import { canonicalJson } from '../core/canonicalJson.ts'
import { addLedgeredRow } from '../core/ledgeredRow.ts'
import { prepared } from '../core/prepared.ts'
import { conflict, notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'

/** What is known when a guided calibration begins. */
export type BegunRoutine = { begunAt: string; by: string; source: string; plan: CalibrationPlan }
/** A reading when it is taken: whether it will count is not yet known. */
export type TakenReading = Omit<CalibrationReading, 'standing' | 'replacedBy'>

type RoutineRow = { routine_id: number; begun_at: string; by: string; source: string; plan: string }
type ReadingRow = {
  reading_id: number
  routine_id: number
  number: number
  run: number
  direction: 'up' | 'down'
  weights: string
  force_n: number
  mean: number
  sd: number
  count: number
  taken_at: string
}
type EndRow = { routine_id: number; ended_at: string; reason: string }

/** What the ledger holds of the beginning of a routine. */
export function routineContent(database: Database.Database, routineId: number): unknown {
  const row = prepared<RoutineRow>(database, 'SELECT * FROM calibration_routine WHERE routine_id = ?').get(routineId)
  if (row === undefined) throw notFound('calibration routine', routineId)
  return {
    routineId: row.routine_id,
    begunAt: row.begun_at,
    by: row.by,
    source: row.source,
    plan: JSON.parse(row.plan),
  }
}

/** What the ledger holds of one reading. */
export function routineReadingContent(database: Database.Database, readingId: number): unknown {
  const row = prepared<ReadingRow>(database, 'SELECT * FROM calibration_reading WHERE reading_id = ?').get(readingId)
  if (row === undefined) throw notFound('calibration reading', readingId)
  return { readingId: row.reading_id, routineId: row.routine_id, number: row.number, ...takenFromRow(row) }
}

/** What the ledger holds of a routine that was broken off. */
export function routineEndContent(database: Database.Database, routineId: number): unknown {
  const row = prepared<EndRow>(database, 'SELECT * FROM calibration_routine_end WHERE routine_id = ?').get(routineId)
  if (row === undefined) throw notFound('end of a calibration routine', routineId)
  return { routineId: row.routine_id, endedAt: row.ended_at, reason: row.reason }
}

function takenFromRow(row: ReadingRow): TakenReading {
  return {
    run: row.run,
    direction: row.direction,
    weights: JSON.parse(row.weights),
    forceN: row.force_n,
    mean: row.mean,
    sd: row.sd,
    count: row.count,
    takenAt: row.taken_at,
  }
}

/** Every reading of a routine in the order in which they were taken. */
export function routineReadings(database: Database.Database, routineId: number): TakenReading[] {
  return prepared<ReadingRow>(database, 'SELECT * FROM calibration_reading WHERE routine_id = ? ORDER BY number')
    .all(routineId)
    .map(takenFromRow)
}

/** Stores what is known before the first reading; returns the routine's number. */
export function beginRoutine(database: Database.Database, begun: BegunRoutine): number {
  const row = {
    kind: 'calibration-routine',
    recordedAt: begun.begunAt,
    sql: 'INSERT INTO calibration_routine (begun_at, by, source, plan) VALUES (@begunAt, @by, @source, @plan)',
    values: { ...begun, plan: canonicalJson(begun.plan) },
    content: routineContent,
  } as const
  return addLedgeredRow(database, row, { after: (routineId) => touch(database, `routine ${routineId}`) }).id
}

/** Keeps a reading for good at the moment it was taken. */
export function addRoutineReading(
  database: Database.Database,
  routineId: number,
  number: number,
  taken: TakenReading,
): void {
  const row = {
    kind: 'calibration-reading',
    recordedAt: taken.takenAt,
    sql: `INSERT INTO calibration_reading (routine_id, number, run, direction, weights, force_n, mean, sd, count, taken_at)
          VALUES (@routineId, @number, @run, @direction, @weights, @forceN, @mean, @sd, @count, @takenAt)`,
    values: { ...taken, routineId, number, weights: canonicalJson(taken.weights) },
    content: routineReadingContent,
  } as const
  addLedgeredRow(database, row, {
    before: () => void routineContent(database, routineId),
    after: () => touch(database, `routine ${routineId}`),
  })
}

/** Notes that a routine was broken off, and why. Its readings stay. */
export function breakOffRoutine(database: Database.Database, routineId: number, endedAt: string, reason: string): void {
  const row = {
    kind: 'calibration-routine-end',
    recordedAt: endedAt,
    sql: 'INSERT INTO calibration_routine_end (routine_id, ended_at, reason) VALUES (@routineId, @endedAt, @reason)',
    values: { routineId, endedAt, reason },
    content: routineEndContent,
  } as const
  addLedgeredRow(database, row, {
    before() {
      routineContent(database, routineId)
      const over = prepared(
        database,
        `SELECT 1 FROM calibration_routine_end WHERE routine_id = @routineId
         UNION ALL SELECT 1 FROM calibration WHERE routine_id = @routineId`,
      ).get({ routineId })
      if (over !== undefined) throw conflict(`Calibration routine ${routineId} is over already.`, 'Begin a new one.')
    },
    after: () => touch(database, `routine ${routineId}`),
  })
}

/** Routines that came to no calibration, oldest first: broken off, or cut short with the program. */
export function brokenOffRoutines(database: Database.Database): BrokenOffRoutine[] {
  return prepared<RoutineRow & { ended_at: string | null; reason: string | null }>(
    database,
    `SELECT r.*, e.ended_at, e.reason FROM calibration_routine r
     LEFT JOIN calibration_routine_end e ON e.routine_id = r.routine_id
     WHERE r.routine_id NOT IN (SELECT routine_id FROM calibration WHERE routine_id IS NOT NULL) ORDER BY r.routine_id`,
  )
    .all()
    .map((row) =>
      brokenOffRoutine.parse({
        routineId: row.routine_id,
        begunAt: row.begun_at,
        by: row.by,
        source: row.source,
        plan: JSON.parse(row.plan),
        endedAt: row.ended_at,
        reason: row.reason ?? '',
        readings: routineReadings(database, row.routine_id).map((taken) => ({
          ...taken,
          standing: 'broken-off',
          replacedBy: null,
        })),
      }),
    )
}
