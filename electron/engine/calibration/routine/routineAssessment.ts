// Held by tests/engine/calibration/routine/calibrationRoutine.spec.ts.
import type { CalibrationPlan, PlannedForces } from '#contract/calibration/calibrationPlan.ts'
import type { AssessmentChoices, RoutineAssessment } from '#contract/calibration/calibrationRoutine.ts'
import type { CalibrationRow } from '#contract/calibration/reading.ts'
import { calibrationOf } from '#domain/calibration/calibrationOf.ts'
import { polynomialAt } from '#domain/calibration/fit/polynomial.ts'
import { creepOf, creepShareOf, type HeldLoad, zeroReturns } from '#domain/calibration/steps/creep.ts'

/** What a routine has so far. */
export type ReadSoFar = {
  rows: CalibrationRow[]
  /** null: no load was held, so creep is not known. */
  held: HeldLoad | null
  plan: CalibrationPlan
  forces: PlannedForces
}

/** Judges the readings of a routine as chosen, with what its plan says of weights, gravity and lever. Throws Trouble. */
export function routineAssessment(read: ReadSoFar, choices: AssessmentChoices): RoutineAssessment {
  const { rows, held, plan, forces } = read
  const { gravityShare, capacityN, steps } = forces
  const { leverHalfWidthPercent } = plan.conditions
  const options = {
    degree: choices.degree,
    throughZero: choices.throughZero,
    fitOver: choices.fitOver,
    invertedAccepted: choices.invertedAccepted,
    capacityN,
    resolution: choices.resolution ?? plan.resolution,
    weightsShare: Math.max(...steps.map((step) => step.weightsShare)),
    buoyancyShare: Math.max(...steps.map((step) => step.buoyancyShare)),
    leverShare: leverHalfWidthPercent > 0 ? leverHalfWidthPercent / 100 : null,
    gravityShare,
  }
  const assessment = calibrationOf(rows, options)
  const toForceN = (reading: number) => polynomialAt(assessment.result.coefficients, reading)
  const creep = [...(held === null ? [] : [creepOf(held, toForceN)]), ...zeroReturns(rows, toForceN)]
  const creepShare = creepShareOf(creep)
  if (creepShare === null) return { rows, creep, assessment }
  // Creep is stated in newtons, which the curve gives first; it does not bear on the curve itself.
  return { rows, creep, assessment: calibrationOf(rows, { ...options, creepShare }) }
}
