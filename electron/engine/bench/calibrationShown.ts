import type { BenchState } from '#contract/bench/bench.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'
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

/** Why the calibration in force makes no force of the readings that come; null: it does, or none is in force. */
export function calibrationUnused(
  calibration: Calibration | null,
  { status, source }: Pick<BenchState['connection'], 'status' | 'source'>,
  unit: ReadingUnit | null,
): BenchState['calibrationUnused'] {
  if (calibration === null) return null
  const { calibrationId, name, device, readingUnit } = calibration
  const because = (): NonNullable<BenchState['calibrationUnused']>['because'] | null => {
    if (status === 'closed' || source === null) return 'not-connected'
    if (device !== source.kind) return 'other-device'
    return unit !== null && readingUnit !== unit ? 'other-unit' : null
  }
  const found = because()
  return found === null ? null : { calibrationId, name, because: found, device, readingUnit }
}
