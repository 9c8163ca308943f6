import type Database from 'better-sqlite3'
import { type BreakEnd, type BreakHeader, breakHeader, type Ending } from '#contract/breaks/capture.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'

type HeaderRow = {
  break_id: number
  session_id: number
  specimen_id: number | null
  started_at: string
  reading_unit: string
  scale: string
  tare: string | null
  settings: string
}

type EndRow = {
  break_id: number
  ended_at: string
  ending: Ending
  samples: number
  missing_samples: number
  curve_sha256: string
}

function plainHeader(database: Database.Database, breakId: number) {
  const row = prepared<HeaderRow>(database, 'SELECT * FROM break_header WHERE break_id = ?').get(breakId)
  if (row === undefined) throw notFound('break', breakId)
  return {
    breakId: row.break_id,
    sessionId: row.session_id,
    specimenId: row.specimen_id,
    startedAt: row.started_at,
    readingUnit: row.reading_unit,
    scale: JSON.parse(row.scale),
    tare: row.tare === null ? null : JSON.parse(row.tare),
    settings: JSON.parse(row.settings),
  }
}

/** What was known when the capture began. */
export function readHeader(database: Database.Database, breakId: number): BreakHeader {
  return breakHeader.parse(plainHeader(database, breakId))
}

/** What the ledger holds of a finished break: just what is stored, with no default that a later version of the program would add. */
export function breakContent(database: Database.Database, breakId: number): unknown {
  return { header: plainHeader(database, breakId), end: readEnd(database, breakId) }
}

/** How the capture ended; null while it runs. */
export function readEnd(database: Database.Database, breakId: number): BreakEnd | null {
  const row = prepared<EndRow>(database, 'SELECT * FROM break_end WHERE break_id = ?').get(breakId)
  if (row === undefined) return null
  return {
    breakId: row.break_id,
    endedAt: row.ended_at,
    ending: row.ending,
    samples: row.samples,
    missingSamples: row.missing_samples,
    curveSha256: row.curve_sha256,
  }
}
