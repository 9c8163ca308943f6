import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { ForceScale, ReadingUnit } from '#contract/calibration/force.ts'
import type { SourceChoice } from '#contract/settings/settings.ts'

/** The calibration that the newest decision put in force; null: none, forces are uncalibrated. */
export async function calibrationInForce(
  archive: Pick<Archive, 'calibrationDecisions' | 'calibration'>,
): Promise<Calibration | null> {
  const decided = (await archive.calibrationDecisions()).at(-1)?.calibrationId ?? null
  return decided === null ? null : archive.calibration(decided)
}

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

/** Whether a due date lies before the day of an instant. */
export function isOverdue(dueOn: string | null, instant: string): boolean {
  return dueOn !== null && instant.slice(0, 10) > dueOn
}
