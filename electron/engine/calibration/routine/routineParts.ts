import type { Clock } from '#acquisition/clock.ts'
import type { CalibrationPlan, PlannedForces } from '#contract/calibration/calibrationPlan.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import type { TakenReading } from '#contract/calibration/reading.ts'

/** What a routine is made of. */
export type RoutineParts = {
  clock: Clock
  plan: CalibrationPlan
  forces: PlannedForces
  readingUnit(): ReadingUnit | null
  /** How far a reading lies from the zero of the bench, N; null: not known. */
  taredN(reading: number): number | null
  /** Throws Trouble when the device is not the one that the routine began with. */
  checkDevice(): void
  /** Called with each reading at the moment it is taken; `number` counts from 0. */
  keep(number: number, taken: TakenReading): void
  changed(): void
}
