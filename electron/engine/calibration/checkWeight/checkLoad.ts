import type { Calibration } from '#contract/calibration/calibration.ts'
import type { CalibrationPlan } from '#contract/calibration/calibrationPlan.ts'
import type { CheckWeightReading } from '#contract/calibration/checkWeight.ts'
import type { GravityChoice } from '#contract/calibration/loading.ts'
import { Trouble } from '#contract/errors.ts'
import { checkedConditions, checkedWeights, stackOf } from '#domain/calibration/routinePlan.ts'
import { calibratedScale } from '#domain/calibration/scale/calibratedScale.ts'
import { forceOfReading } from '#domain/calibration/scale/forceScale.ts'
import { stackForce } from '#domain/calibration/weights/weightStack.ts'
import type { AveragedReading } from '../reading/steadyReading.ts'

/** What is checked: a calibration with a weight, whose force it should read. */
export type CheckLoad = { calibration: Calibration; weights: string[]; expectedN: number; by: string }

/** Force of the weights of those names, N, under the conditions of the calibration. Throws Trouble `invalid-input`. */
export function expectedForceN(
  names: readonly string[],
  kept: CalibrationPlan['weights'],
  { circumstances }: Calibration,
  typedGravity: GravityChoice | null,
  capacityN: number | null,
): number {
  const gravity = typedGravity ?? circumstances?.gravity
  if (gravity === undefined)
    throw new Trouble(
      'invalid-input',
      'The calibration in force does not say what gravity is here.',
      'Give latitude and height, or gravity itself.',
    )
  const conditions = checkedConditions({
    gravity,
    airDensityKgPerM3: circumstances?.airDensityKgPerM3 ?? 1.2,
    leverRatio: circumstances?.leverRatio ?? 1,
    leverHalfWidthPercent: circumstances?.leverHalfWidthPercent ?? 0,
  })
  return stackForce(stackOf(names, checkedWeights(kept), 'The check'), conditions, capacityN).forceN
}

/** What the calibration makes of the readings at zero and under the weight, as it is kept. */
export function checkReading(
  { calibration, weights, expectedN, by }: CheckLoad,
  zero: AveragedReading,
  loaded: AveragedReading,
  takenAt: string,
): Omit<CheckWeightReading, 'checkId'> {
  const toForceN = forceOfReading(calibratedScale(calibration), calibration.readingUnit)!
  const slopeN = Math.abs(toForceN(loaded.mean + 0.5) - toForceN(loaded.mean - 0.5))
  return {
    calibrationId: calibration.calibrationId,
    takenAt,
    by,
    weight: weights.join(' + '),
    expectedN,
    indicatedN: toForceN(loaded.mean) - toForceN(zero.mean),
    sdN: loaded.sd * slopeN,
    count: loaded.count,
  }
}
