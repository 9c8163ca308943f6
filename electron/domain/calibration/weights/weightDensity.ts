import type { Weight, WeightMaterial } from '#contract/calibration/weight.ts'

/** Reference density of conventional mass, kg/m3 (OIML R 111, from memory). */
export const conventionalWeightDensity = 8000

/** Assumed density of weight materials, kg/m3 (OIML R 111); stainless steel: the middle of 7900 to 8000. */
export const materialDensity: Readonly<Record<WeightMaterial, number>> = {
  'cast iron': 7200,
  steel: 7800,
  'stainless steel': 7950,
  brass: 8400,
  'nickel silver': 8600,
}

/** Density of a weight in kg/m3, by its material or as typed. */
export function weightDensity(density: Weight['density']): number {
  return density.kind === 'material' ? materialDensity[density.material] : density.kgPerM3
}
