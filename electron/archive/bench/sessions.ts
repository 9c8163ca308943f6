import { rejectedLines } from '#contract/bench/rejectedLines.ts'
import { type CaptureSession, captureSession } from '#contract/bench/session.ts'
import { bytes, plain } from '../core/columns.ts'
import type { Database } from '../core/database.ts'
import { prepared } from '../core/prepared.ts'
import { recordKind, storeRecord } from '../core/recordKind.ts'
import { numbered, readRecord } from '../core/recordTable.ts'
import { inTransaction } from '../core/transaction.ts'

const linesKeptWhole = 1000
const longestExample = 4096

/** The circumstances of a connection. */
export const sessionKind = recordKind({
  name: 'session',
  noun: 'session',
  table: 'capture_session',
  identity: numbered('sessionId'),
  instant: 'startedAt',
  schema: captureSession,
  columns: { startedAt: plain, source: plain, lineFormat: plain, program: plain },
  topics: ({ sessionId }) => [`session ${sessionId}`],
})

/** Lines that were no reading. */
export const rejectedLinesKind = recordKind({
  name: 'rejected-lines',
  noun: 'note of rejected lines',
  table: 'rejected_line',
  identity: numbered('rejectedLineId'),
  instant: 'recordedAt',
  schema: rejectedLines,
  columns: { sessionId: plain, recordedAt: plain, count: plain, example: bytes },
})

/** One session. Throws the trouble "not-found" when there is none. */
export function readSession(database: Database, sessionId: number): CaptureSession {
  return readRecord(database, sessionKind, sessionId)
}

/** Stores the circumstances of a connection. */
export function beginSession(database: Database, session: Omit<CaptureSession, 'sessionId'>): CaptureSession {
  return inTransaction(database, () => storeRecord(database, sessionKind, session))
}

/**
 * Keeps a line that was no reading, with how many there were; only the first thousand of a session are kept whole, all are
 * counted.
 */
export function keepRejectedLines(
  database: Database,
  sessionId: number,
  recordedAt: string,
  count: number,
  example: Uint8Array,
): void {
  inTransaction(database, () => {
    readSession(database, sessionId)
    const { kept } = prepared<{ kept: number }>(
      database,
      'SELECT count(*) AS kept FROM rejected_line WHERE session_id = ?',
    ).get(sessionId)!
    const whole = kept < linesKeptWhole ? Buffer.from(example.slice(0, longestExample)).toString('hex') : null
    storeRecord(database, rejectedLinesKind, { sessionId, recordedAt, count, example: whole })
  })
}
