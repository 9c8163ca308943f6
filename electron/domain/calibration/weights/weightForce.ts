import { conventionalAirDensity } from './airDensity.ts'
import { conventionalWeightDensity } from './weightDensity.ts'

/** What a weight pulls through: local gravity, the air about it, and a lever if it hangs on one. */
export type LoadingConditions = {
  readonly gMPerS2: number
  readonly airDensityKgPerM3: number
  /** Force on the cell over weight force; 1 without a lever. */
  readonly leverRatio: number
}

/**
 * Mass in kg from conventional mass in kg and density in kg/m3.
 *
 *   m = m_c (1 − 1.2/8000) / (1 − 1.2/ρ)
 *
 * Throws RangeError for a mass or a density that is not positive.
 * Source: OIML D 28 and R 111 §10 (from memory). Checked: tests/domain/calibration/weights/weightForce.spec.ts.
 */
export function massFromConventional(conventionalMassKg: number, densityKgPerM3: number): number {
  if (!(conventionalMassKg > 0)) throw new RangeError('massFromConventional requires a mass above 0')
  if (!(densityKgPerM3 > 0)) throw new RangeError('massFromConventional requires a density above 0')
  return (
    (conventionalMassKg * (1 - conventionalAirDensity / conventionalWeightDensity)) /
    (1 - conventionalAirDensity / densityKgPerM3)
  )
}

/**
 * Force in N of a weight hanging in air, on the cell itself or on a lever.
 *
 *   F = m g (1 − ρₐ/ρ) L      m mass kg from conventional mass, g m/s2, ρₐ air and ρ weight kg/m3, L lever ratio
 *
 * With ρₐ = 1.2 kg/m3 the density of the weight drops out: F = 0.99985 m_c g L.
 * Throws RangeError for a mass, density, gravity or lever ratio that is not positive, or a negative air density.
 * Source: OIML R 111 (from memory). Checked: tests/domain/calibration/weights/weightForce.spec.ts.
 */
export function weightForceN(
  conventionalMassKg: number,
  densityKgPerM3: number,
  conditions: LoadingConditions,
): number {
  const { gMPerS2, airDensityKgPerM3, leverRatio } = conditions
  if (!(gMPerS2 > 0)) throw new RangeError('weightForceN requires a gravity above 0')
  if (!(airDensityKgPerM3 >= 0)) throw new RangeError('weightForceN requires an air density of 0 or more')
  if (!(leverRatio > 0)) throw new RangeError('weightForceN requires a lever ratio above 0')
  const massKg = massFromConventional(conventionalMassKg, densityKgPerM3)
  return massKg * gMPerS2 * (1 - airDensityKgPerM3 / densityKgPerM3) * leverRatio
}
