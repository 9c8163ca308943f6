import type { WeightMaterial } from '#contract/calibration/weight.ts'
import { writeFixed } from '../units/numbers.ts'
import type { Quantities, Quantity } from '../units/quantities.ts'

export const materialNames: readonly WeightMaterial[] = [
  'cast iron',
  'steel',
  'stainless steel',
  'brass',
  'nickel silver',
]

/** A known load, with the hundredths that weights can tell. */
export function loadText(forceN: number, force: Quantity): string {
  const shown = forceN * force.factor
  return `${writeFixed(shown, shown >= 1000 ? 1 : 2)}\u00a0${force.unit}`
}

/** A stack of weights by their names; no weights: the zero point. */
export function stackWords(names: readonly string[]): string {
  return names.length === 0 ? 'no weights' : names.join(' + ')
}

/** What a set of weights may begin with. */
export const usualWeightsWords: Readonly<Record<Quantities['system'], string>> = {
  SI: 'Begin with 1, 2, 5, 10, 20 and 20 kg of cast iron, class M1',
  US: 'Begin with 2, 5, 10, 25, 50 and 50 lb of cast iron, each within 0.01 %',
}
