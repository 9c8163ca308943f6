import type { WeightEntry } from '#contract/calibration/weight.ts'
import { materialDensity } from '#domain/calibration/weights/weightDensity.ts'
import { classHalfWidthKg } from '#domain/calibration/weights/weightTolerance.ts'
import type { Quantity } from '../units/quantities.ts'

/** By how much a weight may be off, and who says so. */
export function toleranceWords(weight: Pick<WeightEntry, 'nominalKg' | 'tolerance'>, smallMass: Quantity): string {
  const { tolerance } = weight
  if (tolerance.kind === 'own') return `±${smallMass.text(tolerance.halfWidthKg)}, by its owner`
  const halfWidthKg = classHalfWidthKg(weight)
  return halfWidthKg === null
    ? `class ${tolerance.class}, which has no limit for this mass`
    : `±${smallMass.text(halfWidthKg)}, class ${tolerance.class}`
}

/** The density of a weight and what it is taken from. */
export function densityWords({ density }: Pick<WeightEntry, 'density'>, quantity: Quantity): string {
  return density.kind === 'typed'
    ? quantity.text(density.kgPerM3)
    : `${density.material}, ${quantity.text(materialDensity[density.material])}`
}
