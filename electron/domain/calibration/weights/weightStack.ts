import type { Weight } from '#contract/calibration/weight.ts'
import { Trouble } from '#contract/errors.ts'
import { conventionalAirDensity } from './airDensity.ts'
import { conventionalWeightDensity, weightDensity } from './weightDensity.ts'
import { type LoadingConditions, weightForceN } from './weightForce.ts'
import { weightHalfWidthKg } from './weightTolerance.ts'

/** The force of a stack of weights, with the half-widths of what is believed of it, as shares of the force. */
export type StackForce = {
  readonly forceN: number
  readonly weightsShare: number
  readonly buoyancyShare: number
}

/** Air density is rarely measured in a workshop: within a tenth of the value used. */
const airDensityHalfWidthShare = 0.1

/**
 * Force in N of weights hanging together, and the half-widths of mass and buoyancy as shares of it.
 *
 *   F = Σ Fᵢ      weights share = Σ tᵢ / Σ mᵢ      buoyancy share = Σ mᵢ |1/ρᵢ − 1/8000| / Σ mᵢ · 0.1 ρₐ
 *
 * tᵢ tolerance kg, mᵢ conventional mass kg, ρᵢ density kg/m3, ρₐ air density kg/m3. Tolerances add straight, not by squares:
 * weights of one set may all be off in the same sense. An empty stack is the zero point.
 * Throws Trouble for a mass that is not positive, or a force above `capacityN` (null: not known).
 * Source: OIML R 111 and common practice. Checked: tests/domain/calibration/weights/weightStack.spec.ts.
 */
export function stackForce(
  weights: readonly Weight[],
  conditions: LoadingConditions,
  capacityN: number | null,
): StackForce {
  if (weights.length === 0) return { forceN: 0, weightsShare: 0, buoyancyShare: 0 }
  let forceN = 0
  let massKg = 0
  let toleranceKg = 0
  let airVolumeM3 = 0
  for (const weight of weights) {
    const conventionalKg = weight.conventionalMassKg ?? weight.nominalKg
    if (!(conventionalKg > 0))
      throw new Trouble(
        'invalid-input',
        `The weight "${weight.name}" has a mass of ${conventionalKg} kg.`,
        'Give every weight a mass above 0 kg; for the zero point choose no weight at all.',
      )
    const density = weightDensity(weight.density)
    forceN += weightForceN(conventionalKg, density, conditions)
    massKg += conventionalKg
    toleranceKg += weightHalfWidthKg(weight)
    airVolumeM3 += conventionalKg * Math.abs(1 / density - 1 / conventionalWeightDensity)
  }
  if (capacityN !== null && forceN > capacityN)
    throw new Trouble(
      'invalid-input',
      'These weights are more than the rated load allows.',
      'Do not hang them: take lighter weights, or correct the rated load if it is wrong.',
    )
  const airHalfWidth = airDensityHalfWidthShare * (conditions.airDensityKgPerM3 || conventionalAirDensity)
  return { forceN, weightsShare: toleranceKg / massKg, buoyancyShare: (airVolumeM3 / massKg) * airHalfWidth }
}
