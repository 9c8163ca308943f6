import type { WeightEntry } from '#contract/calibration/weight.ts'
import { materialDensity } from '#domain/calibration/weights/weightDensity.ts'
import { classHalfWidthKg } from '#domain/calibration/weights/weightTolerance.ts'
import { withoutEndingZeros, writeFixed, writeNumber } from '../units/numbers.ts'

/** By how much a weight may be off, and who says so. */
export function toleranceWords(weight: Pick<WeightEntry, 'nominalKg' | 'tolerance'>): string {
  const { tolerance } = weight
  if (tolerance.kind === 'own') return `±${gramsText(tolerance.halfWidthKg)}, by its owner`
  const halfWidthKg = classHalfWidthKg(weight)
  return halfWidthKg === null
    ? `class ${tolerance.class}, which has no limit for this mass`
    : `±${gramsText(halfWidthKg)}, class ${tolerance.class}`
}

/** The density of a weight and what it is taken from. */
export function densityWords({ density }: Pick<WeightEntry, 'density'>): string {
  return density.kind === 'typed'
    ? `${writeFixed(density.kgPerM3, 0)} kg/m³`
    : `${density.material}, ${writeFixed(materialDensity[density.material], 0)} kg/m³`
}

function gramsText(kilograms: number): string {
  const grams = kilograms * 1000
  const [amount, unit] = grams < 1 ? [writeNumber(grams * 1000, 1), 'mg'] : [writeNumber(grams, 2), 'g']
  return `${withoutEndingZeros(amount)} ${unit}`
}
