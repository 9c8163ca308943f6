// Held by tests/engine/calibration/routine/calibrationDesk.spec.ts.
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CalibrationPlan, PlannedForces } from '#contract/calibration/calibrationPlan.ts'
import type { AssessmentChoices } from '#contract/calibration/calibrationRoutine.ts'
import { checkedWeights } from '#domain/calibration/routinePlan.ts'
import type { BegunOn } from './begunOn.ts'
import type { CalibrationRoutine } from './calibrationRoutine.ts'

/** What the person says of a calibration when it is saved. */
export type SavingOptions = {
  choices: AssessmentChoices
  name: string
  by: string
  dueOn: string | null
  note: string
  temperatureEndC: number | null
}

/** A routine that has been read, and under what. */
export type ReadRoutine = {
  routine: Pick<CalibrationRoutine, 'assess' | 'preloadsDone' | 'readings'>
  plan: CalibrationPlan
  forces: PlannedForces
  begunOn: BegunOn
}

/** The calibration as it is kept: readings, judgement, and all that is needed to make it again. Throws the Trouble of judging it. */
export function calibrationToSave(
  { routine, plan, forces, begunOn }: ReadRoutine,
  { choices, name, by, dueOn, note, temperatureEndC }: SavingOptions,
  inForce: Calibration | null,
  madeAt: string,
): Omit<Calibration, 'calibrationId'> {
  const { gravity, airDensityKgPerM3, leverRatio, leverHalfWidthPercent } = plan.conditions
  const { rows, creep, assessment } = routine.assess(choices)
  return {
    ...{ name, madeAt, by, dueOn, note },
    supersedes: inForce?.device === begunOn.device ? inForce.calibrationId : null,
    ...begunOn,
    circumstances: {
      ...{ gravity, airDensityKgPerM3, leverRatio, leverHalfWidthPercent },
      gMPerS2: forces.gMPerS2,
      capacityN: forces.capacityN,
      preloads: routine.preloadsDone(),
      resolution: choices.resolution ?? plan.resolution,
      temperatureStartC: plan.temperatureStartC,
      temperatureEndC,
      temperatureNote: plan.temperatureNote,
    },
    weights: checkedWeights(plan.weights),
    readings: routine.readings(),
    ...{ rows, creep, assessment },
  }
}
