import type { BenchState } from '#contract/bench/bench.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { isOverdue } from '#domain/calibration/dueDate.ts'

/** The calibration in force, where the readings that come are under it; null: they are not. */
export function calibrationAtHand(scale: ForceScale, inForce: Calibration | null): Calibration | null {
  return scale.kind === 'calibration' && scale.calibrationId === inForce?.calibrationId ? inForce : null
}

/** What the bench shows of it. */
export function calibrationShown(calibration: Calibration | null, nowInstant: string): BenchState['calibration'] {
  if (calibration === null) return null
  const { calibrationId, name, dueOn, assessment } = calibration
  const { verifiedRangeN } = assessment.result
  return { calibrationId, name, verifiedRangeN, dueOn, overdue: isOverdue(dueOn, nowInstant) }
}
