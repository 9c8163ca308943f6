import type Database from 'better-sqlite3'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { verificationOf } from '#domain/calibration/verificationOf.ts'
import { readSession } from '../bench/sessions.ts'
import { calibration } from '../calibration/calibrations.ts'
import { prepared } from '../core/prepared.ts'
import { notFound } from '../core/recordTrouble.ts'
import { type BreakSummaryRow, breakSummaryFromRow, breakSummaryText } from '../lists/summaries.ts'
import { assessmentsOf } from './assessments.ts'
import { readEnd, readHeader } from './breakHeaders.ts'
import { decisionsOf } from './decisions.ts'
import { evaluationsOf } from './evaluations.ts'

/** A break with all that was ever recorded of it. */
export function readBreak(database: Database.Database, breakId: number): BreakRecord {
  const row = prepared<BreakSummaryRow>(database, `${breakSummaryText} WHERE b.break_id = ?`).get(breakId)
  if (row === undefined) throw notFound('break', breakId)
  const header = readHeader(database, breakId)
  const evaluations = evaluationsOf(database, breakId)
  return {
    summary: breakSummaryFromRow(database, row),
    header,
    end: readEnd(database, breakId),
    session: readSession(database, header.sessionId),
    evaluations,
    inForceId: row.evaluation_id,
    verifications: evaluations.flatMap(({ evaluationId, scale, result }) =>
      scale.kind === 'calibration'
        ? [{ evaluationId, ...verificationOf(calibration(database, scale.calibrationId), result.peakN) }]
        : [],
    ),
    assessments: assessmentsOf(database, breakId),
    decisions: decisionsOf(database, breakId),
  }
}
