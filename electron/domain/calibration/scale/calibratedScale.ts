import type { SourceChoice } from '#contract/bench/source.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ForceScale, ReadingUnit } from '#contract/calibration/forceScale.ts'

/** Whether a calibration holds for readings of that unit from that kind of device. */
export function calibrationHolds(
  calibration: Pick<Calibration, 'device' | 'readingUnit'>,
  device: SourceChoice['kind'],
  unit: ReadingUnit,
): boolean {
  return calibration.device === device && calibration.readingUnit === unit
}

/** The scale that a calibration gives. */
export function calibratedScale({ calibrationId, assessment }: Calibration): ForceScale {
  return { kind: 'calibration', calibrationId, coefficients: assessment.result.coefficients }
}
