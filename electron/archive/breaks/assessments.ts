import type Database from 'better-sqlite3'
import { type Assessment, assessment } from '#contract/breaks/assessment.ts'
import { addLedgeredRow } from '../core/ledgeredRow.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { refreshBreak } from '../lists/current.ts'
import { readHeader } from './breakHeaders.ts'

type AssessmentRow = {
  assessment_id: number
  break_id: number
  recorded_at: string
  by: string
  wood_failure_percent: number | null
  failure_pattern: string | null
  note: string
}

/** What the ledger holds of an assessment: just what is stored. */
export function assessmentContent(database: Database.Database, assessmentId: number): unknown {
  const row = prepared<AssessmentRow>(database, 'SELECT * FROM assessment WHERE assessment_id = ?').get(assessmentId)
  if (row === undefined) throw notFound('assessment', assessmentId)
  return plainAssessment(row)
}

function plainAssessment(row: AssessmentRow) {
  return {
    assessmentId: row.assessment_id,
    breakId: row.break_id,
    recordedAt: row.recorded_at,
    by: row.by,
    woodFailurePercent: row.wood_failure_percent,
    failurePattern: row.failure_pattern,
    note: row.note,
  }
}

/** Lays an assessment of the broken faces over the older ones. */
export function addAssessment(database: Database.Database, made: Omit<Assessment, 'assessmentId'>): Assessment {
  const row = {
    kind: 'assessment',
    recordedAt: made.recordedAt,
    sql: `INSERT INTO assessment (break_id, recorded_at, by, wood_failure_percent, failure_pattern, note)
          VALUES (@breakId, @recordedAt, @by, @woodFailurePercent, @failurePattern, @note)`,
    values: made,
    content: assessmentContent,
  } as const
  const stored = addLedgeredRow(database, row, {
    before: () => void readHeader(database, made.breakId),
    after: () => refreshBreak(database, made.breakId),
  })
  return assessment.parse(stored.content)
}

/** Every assessment of a break, newest last. */
export function assessmentsOf(database: Database.Database, breakId: number): Assessment[] {
  return prepared<AssessmentRow>(database, 'SELECT * FROM assessment WHERE break_id = ? ORDER BY assessment_id')
    .all(breakId)
    .map((row) => assessment.parse(plainAssessment(row)))
}
