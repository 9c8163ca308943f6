// Held by tests/archive/breaks/breaks.spec.ts.
import type { CaptureSession } from '#contract/bench/session.ts'
import type { BreakRecord } from '#contract/breaks/break.ts'
import { verificationOf } from '#domain/calibration/verificationOf.ts'
import type { Database } from '../core/database.ts'
import { readBreakSummary } from '../lists/summaries.ts'
import { verifyingCalibration } from '../lists/verifyingCalibration.ts'
import { assessmentsOf } from './assessments.ts'
import { readEnd, readHeader } from './breakHeaders.ts'
import { decisionsOf } from './decisions.ts'
import { evaluationsOf } from './evaluations.ts'

/** A break with all that was ever recorded of it; whoever owns the sessions of the bench gives `sessionOf`. */
export function readBreak(
  database: Database,
  breakId: number,
  sessionOf: (database: Database, sessionId: number) => CaptureSession,
): BreakRecord {
  const { summary, inForceId } = readBreakSummary(database, breakId)
  const header = readHeader(database, breakId)
  const evaluations = evaluationsOf(database, breakId)
  return {
    summary,
    header,
    end: readEnd(database, breakId),
    session: sessionOf(database, header.sessionId),
    evaluations,
    inForceId,
    verifications: evaluations.flatMap(({ evaluationId, scale, result }) =>
      scale.kind === 'calibration'
        ? [{ evaluationId, ...verificationOf(verifyingCalibration(database, scale.calibrationId), result.peakN) }]
        : [],
    ),
    assessments: assessmentsOf(database, breakId),
    decisions: decisionsOf(database, breakId),
  }
}
