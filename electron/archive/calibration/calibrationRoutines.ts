import { type BrokenOffRoutine, brokenOffRoutine } from '#contract/calibration/calibrationRoutine.ts'
import type { TakenReading } from '#contract/calibration/reading.ts'
import { type BegunRoutine, begunRoutine, routineEnd, routineReading } from '#contract/calibration/routineRecords.ts'
import { json, plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { findRecord, numbered, ofItsOwner, readRecord, readRecords } from '../core/recordTable.ts'
import { conflict } from '../core/recordTrouble.ts'
import { inTransaction } from '../core/transaction.ts'
import { type ReadableRows, readableRows } from '../lists/readableRows.ts'

/** The beginning of a guided calibration. */
export const routineKind = recordKind({
  name: 'calibration-routine',
  noun: 'calibration routine',
  table: 'calibration_routine',
  identity: numbered('routineId'),
  instant: 'begunAt',
  schema: begunRoutine,
  columns: { begunAt: plain, by: plain, source: plain, plan: json },
  topics: ({ routineId }) => [`routine ${routineId}`],
})

/** One averaged reading of a routine. */
export const routineReadingKind = recordKind({
  name: 'calibration-reading',
  noun: 'calibration reading',
  table: 'calibration_reading',
  identity: numbered('readingId'),
  instant: 'takenAt',
  schema: routineReading,
  columns: {
    routineId: plain,
    number: plain,
    run: plain,
    direction: plain,
    weights: json,
    forceN: plain,
    mean: plain,
    sd: plain,
    count: plain,
    takenAt: plain,
  },
  topics: ({ routineId }) => [`routine ${routineId}`],
})

/** A routine that was broken off. */
export const routineEndKind = recordKind({
  name: 'calibration-routine-end',
  noun: 'end of a calibration routine',
  table: 'calibration_routine_end',
  identity: ofItsOwner('routineId'),
  instant: 'endedAt',
  schema: routineEnd,
  columns: { endedAt: plain, reason: plain },
  topics: ({ routineId }) => [`routine ${routineId}`],
})

/** Every reading of a routine in the order in which they were taken. */
export function routineReadings(database: Database, routineId: number): TakenReading[] {
  return readRecords(database, routineReadingKind, 'WHERE routine_id = ? ORDER BY number', routineId).map(
    ({ readingId: _readingId, routineId: _routineId, number: _number, ...taken }) => taken,
  )
}

/** Stores what is known before the first reading; returns the routine's number. */
export function beginRoutine(database: Database, begun: Omit<BegunRoutine, 'routineId'>): number {
  return inTransaction(database, () => storeRecord(database, routineKind, begun).routineId)
}

/** Keeps a reading for good at the moment it was taken; `number` counts the readings of the routine from 0. */
export function addRoutineReading(database: Database, routineId: number, number: number, taken: TakenReading): void {
  inTransaction(database, () => {
    readRecord(database, routineKind, routineId)
    storeRecord(database, routineReadingKind, { ...taken, routineId, number })
  })
}

/** Notes that a routine was broken off, and why. Its readings stay. */
export function breakOffRoutine(database: Database, routineId: number, endedAt: string, reason: string): void {
  inTransaction(database, () => {
    readRecord(database, routineKind, routineId)
    refuseOver(database, routineId)
    storeRecord(database, routineEndKind, { routineId, endedAt, reason })
  })
}

/** Throws the trouble "conflict" for a routine that came to a calibration or was broken off. */
export function refuseOver(database: Database, routineId: number): void {
  const calibrated = prepared(database, 'SELECT 1 FROM calibration WHERE routine_id = ?').get(routineId)
  if (calibrated !== undefined || findRecord(database, routineEndKind, routineId) !== null)
    throw conflict(`Calibration routine ${routineId} is over already.`, 'Begin a new one; its readings are kept.')
}

/** Routines that came to no calibration, oldest first: broken off, or cut short with the program; one that runs now is among them. */
export function brokenOffRoutines(database: Database): ReadableRows<BrokenOffRoutine> {
  const left = prepared<{ routine_id: number }>(
    database,
    `SELECT routine_id FROM calibration_routine
     WHERE routine_id NOT IN (SELECT routine_id FROM calibration WHERE routine_id IS NOT NULL) ORDER BY routine_id`,
  ).all()
  const ids = left.map((row) => row.routine_id)
  return readableRows(routineKind.noun, ids, (routineId) => brokenOff(database, routineId))
}

function brokenOff(database: Database, routineId: number): BrokenOffRoutine {
  const end = findRecord(database, routineEndKind, routineId)
  return brokenOffRoutine.parse({
    ...readRecord(database, routineKind, routineId),
    endedAt: end?.endedAt ?? null,
    reason: end?.reason ?? '',
    readings: routineReadings(database, routineId).map((taken) => ({
      ...taken,
      standing: 'broken-off',
      replacedBy: null,
    })),
  })
}
