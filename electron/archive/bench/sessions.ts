import type Database from 'better-sqlite3'
import type { CaptureSession } from '#contract/bench/session.ts'
import { appendLedger } from '../core/ledger.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { touch } from '../core/touched.ts'

const linesKeptWhole = 1000
const longestExample = 4096

type SessionRow = {
  session_id: number
  started_at: string
  source: string
  line_format: string
  program: string
}

/** Stores the circumstances of a connection. */
export function beginSession(database: Database.Database, session: Omit<CaptureSession, 'sessionId'>): CaptureSession {
  return database
    .transaction(() => {
      const { startedAt, source, lineFormat, program } = session
      const { lastInsertRowid } = prepared(
        database,
        'INSERT INTO capture_session (started_at, source, line_format, program) VALUES (?, ?, ?, ?)',
      ).run(startedAt, source, lineFormat, program)
      const stored = readSession(database, Number(lastInsertRowid))
      appendLedger(database, 'session', stored.sessionId, startedAt, stored)
      touch(database, `session ${stored.sessionId}`)
      return stored
    })
    .immediate()
}

/** One session. */
export function readSession(database: Database.Database, sessionId: number): CaptureSession {
  const row = prepared<SessionRow>(database, 'SELECT * FROM capture_session WHERE session_id = ?').get(sessionId)
  if (row === undefined) throw notFound('session', sessionId)
  return {
    sessionId: row.session_id,
    startedAt: row.started_at,
    source: row.source,
    lineFormat: row.line_format,
    program: row.program,
  }
}

/** Counts lines that were no reading and keeps the example, whole for the first thousand of a session. */
export function keepRejectedLines(
  database: Database.Database,
  sessionId: number,
  recordedAt: string,
  count: number,
  example: Uint8Array,
): void {
  readSession(database, sessionId)
  database
    .transaction(() => {
      const kept = prepared<{ kept: number }>(
        database,
        'SELECT count(*) AS kept FROM rejected_line WHERE session_id = ?',
      ).get(sessionId)!.kept
      prepared(database, 'INSERT INTO rejected_line (session_id, recorded_at, count, example) VALUES (?, ?, ?, ?)').run(
        sessionId,
        recordedAt,
        count,
        kept < linesKeptWhole ? example.slice(0, longestExample) : null,
      )
    })
    .immediate()
}
