import type { Database } from '../database.ts'
import { appendLedger } from '../ledger.ts'
import type { Migration } from '../migration.ts'
import { rewriteTables } from '../schema/rewriteTables.ts'
import { appendOnly } from './0001.ts'

/** Older versions of SQLite take no NULL for valid JSON, so a column that may be NULL says so. */
const jsonOrNull = (table: string, column: string) => ({
  table,
  from: `CHECK (json_valid(${column}))`,
  to: `CHECK (${column} IS NULL OR json_valid(${column}))`,
})

export const migration: Migration = {
  number: 5,
  title: 'formats and rejected lines in the chain, and conditions that list no kinds',
  sql: appendOnly('format_history', 'format_version = NEW.format_version'),
  run(database, instant) {
    rewriteTables(database, [
      jsonOrNull('break_header', 'tare'),
      jsonOrNull('calibration', 'circumstances'),
      jsonOrNull('evaluation', 'course'),
      {
        table: 'decision',
        from: `CHECK (kind IN ('set-aside', 'taken-back', 'reassigned',
                   'peak-picked', 'premature-failure', 'peak-as-found'))`,
        to: "CHECK (kind <> '')",
      },
      {
        table: 'decision',
        from: `CHECK (cause IS NULL OR (kind = 'set-aside'
                   AND cause IN ('specimen-slipped', 'wrong-block', 'fixture-touched', 'other')))`,
        to: "CHECK (cause <> '')",
      },
      {
        table: 'decision',
        from: `CHECK ((kind IN ('peak-picked', 'premature-failure')) = (sample_time_s IS NOT NULL)),
  `,
        to: '',
      },
      { table: 'reevaluation_decision', from: "CHECK (kind IN ('adopted', 'dropped'))", to: "CHECK (kind <> '')" },
    ])
    enterFormats(database, instant)
    enterRejectedLines(database, instant)
  },
}

// What is there already is entered with the instant of the migration: since then, and not before, the chain vouches for it.

function enterFormats(database: Database, instant: string): void {
  const rows = database
    .prepare<[], { format_version: number; reached_at: string; program: string }>(
      'SELECT format_version, reached_at, program FROM format_history ORDER BY format_version',
    )
    .all()
  for (const { format_version: formatVersion, reached_at: reachedAt, program } of rows)
    appendLedger(database, 'format', formatVersion, instant, { formatVersion, reachedAt, program })
}

function enterRejectedLines(database: Database, instant: string): void {
  const rows = database
    .prepare<[], { id: number; session_id: number; recorded_at: string; count: number; example: Buffer | null }>(
      `SELECT rejected_line_id AS id, session_id, recorded_at, count, example
       FROM rejected_line ORDER BY rejected_line_id`,
    )
    .all()
  for (const { id, session_id: sessionId, recorded_at: recordedAt, count, example } of rows)
    appendLedger(database, 'rejected-lines', id, instant, {
      rejectedLineId: id,
      sessionId,
      recordedAt,
      count,
      example: example === null ? null : example.toString('hex'),
    })
}
