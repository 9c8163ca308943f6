// Held by tests/archive/breaks/breaks.spec.ts.
import type { CaptureSession } from '#contract/bench/session.ts'
import type { BreakRecord } from '#contract/breaks/break.ts'
import type { Evaluation } from '#contract/breaks/evaluation.ts'
import { leftOut } from '#contract/keeping/unreadable.ts'
import { verificationOf } from '#domain/calibration/verificationOf.ts'
import type { Database } from '../core/database.ts'
import { readRecord } from '../core/recordTable.ts'
import { type ReadableRows, readableRecords, readableRows } from '../lists/readableRows.ts'
import { readBreakSummary } from '../lists/summaries.ts'
import { verifyingCalibration } from '../lists/verifyingCalibration.ts'
import { assessmentKind } from './assessments.ts'
import { readEnd, readHeader } from './breakHeaders.ts'
import { decisionKind } from './decisions.ts'
import { evaluationKind } from './evaluations.ts'

/**
 * A break with all that was ever recorded of it and can be read. Throws where its result in force is none of that: scale and
 * zero of everything that is shown of a break are those of that result. Whoever owns the sessions of the bench gives `sessionOf`.
 */
export function readBreak(
  database: Database,
  breakId: number,
  sessionOf: (database: Database, sessionId: number) => CaptureSession,
): BreakRecord {
  const { summary, inForceId } = readBreakSummary(database, breakId)
  const header = readHeader(database, breakId)
  const evaluations = readableRecords(database, evaluationKind, 'WHERE break_id = ? ORDER BY evaluation_id', breakId)
  if (inForceId !== null && !evaluations.rows.some(({ evaluationId }) => evaluationId === inForceId))
    readRecord(database, evaluationKind, inForceId)
  const verifications = verificationsOf(database, evaluations.rows)
  const assessments = readableRecords(database, assessmentKind, 'WHERE break_id = ? ORDER BY assessment_id', breakId)
  const decisions = readableRecords(database, decisionKind, 'WHERE break_id = ? ORDER BY decision_id', breakId)
  return {
    summary,
    header,
    end: readEnd(database, breakId),
    session: sessionOf(database, header.sessionId),
    evaluations: evaluations.rows,
    inForceId,
    verifications: verifications.rows,
    assessments: assessments.rows,
    decisions: decisions.rows,
    ...leftOut(evaluations, verifications, assessments, decisions),
  }
}

/** The peaks of those made under a calibration against it; one whose calibration cannot be read hides no other. */
function verificationsOf(
  database: Database,
  evaluations: readonly Evaluation[],
): ReadableRows<BreakRecord['verifications'][number]> {
  const calibrated = new Map(
    evaluations.flatMap(({ evaluationId, scale, result }) =>
      scale.kind === 'calibration' ? [[evaluationId, { ...scale, peakN: result.peakN }] as const] : [],
    ),
  )
  return readableRows('uncertainty of evaluation', [...calibrated.keys()], (evaluationId) => {
    const { calibrationId, peakN } = calibrated.get(evaluationId)!
    return { evaluationId, ...verificationOf(verifyingCalibration(database, calibrationId), peakN) }
  })
}
