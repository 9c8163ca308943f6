import type { Archive } from '#archive/archive.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'

/** The calibration that the newest decision put in force; null: none, forces are uncalibrated. */
export async function calibrationInForce(
  archive: Pick<Archive, 'calibrationDecided' | 'calibration'>,
): Promise<Calibration | null> {
  const decided = await archive.calibrationDecided()
  return decided === null ? null : archive.calibration(decided)
}
