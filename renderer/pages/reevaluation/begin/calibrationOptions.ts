import type { CalibrationSummary } from '#contract/calibration/calibrationRecords.ts'
import { classWords } from '#words/calibration/rangeWords.ts'
import { deviceWords } from '#words/keeping/demoWords.ts'
import { dayWords } from '#words/units/times.ts'

export type CalibrationOption = { calibrationId: number; name: string; words: string }

/** The calibrations that can be chosen, newest first; `readingUnit` null: the breaks may have readings in any unit. */
export function calibrationOptions(
  calibrations: readonly CalibrationSummary[],
  readingUnit: CalibrationSummary['readingUnit'] | null,
): CalibrationOption[] {
  return calibrations
    .filter((row) => readingUnit === null || row.readingUnit === readingUnit)
    .map((row) => ({
      calibrationId: row.calibrationId,
      name: row.name,
      words: [
        `${row.name}: ${dayWords(row.madeAt)}`,
        classWords(row.class),
        `readings in ${row.readingUnit}`,
        deviceWords(row.device),
        ...(row.inForce ? ['in force'] : []),
      ].join(', '),
    }))
}
