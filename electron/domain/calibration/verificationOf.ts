import type { Flag } from '#contract/breaks/evaluation.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { Verification } from '#contract/calibration/verification.ts'
import { uncertaintyAt } from './uncertainty/uncertaintyAt.ts'

/** What of a calibration a result is held against. */
export type VerifyingCalibration = Pick<Calibration, 'calibrationId' | 'name'> & {
  readonly assessment: Pick<Calibration['assessment'], 'result' | 'budget'>
}

/**
 * How a force stands against the calibration it was found with: times the highest force applied, and the expanded
 * uncertainty (k = 2) in N and percent inside the verified range.
 *
 *   times = F / F_highest
 *
 * A force of 0 or less, or null, is outside every range. What cannot be said is null.
 * Source: uncertaintyAt; the ratio is arithmetic. Checked: tests/domain/calibration/verificationOf.spec.ts.
 */
export function verificationOf(calibration: VerifyingCalibration, forceN: number | null): Verification {
  const { result, budget } = calibration.assessment
  const range = result.verifiedRangeN
  const inside = range !== null && forceN !== null && forceN >= range[0] && forceN <= range[1]
  const uncertainty = inside && budget !== null ? uncertaintyAt(budget.model, forceN) : null
  return {
    calibrationId: calibration.calibrationId,
    name: calibration.name,
    verifiedRangeN: range,
    timesVerified: range === null || forceN === null ? null : forceN / range[1],
    expandedUncertaintyN: uncertainty?.expandedN ?? null,
    expandedUncertaintyPercent: uncertainty?.expandedPercent ?? null,
  }
}

/** The flag of a force outside the verified range; a calibration without one verifies nothing, so all lies above. */
export function verifiedRangeFlags(verifiedRangeN: readonly [number, number] | null, forceN: number | null): Flag[] {
  if (forceN === null) return []
  if (verifiedRangeN === null || forceN > verifiedRangeN[1]) return ['above-verified-range']
  return forceN < verifiedRangeN[0] ? ['below-verified-range'] : []
}
