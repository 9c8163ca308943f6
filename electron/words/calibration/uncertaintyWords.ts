import type { UncertaintySource } from '#contract/calibration/uncertainty.ts'
import { writeNumber } from '../units/numbers.ts'

/** Where a share of the uncertainty comes from, in words. */
export const sourceWords: Record<UncertaintySource, string> = {
  weights: 'Mass of the weights',
  buoyancy: 'Buoyancy of the air',
  lever: 'Lever ratio',
  gravity: 'Local gravity',
  fit: 'Fit of the curve',
  'lack-of-fit': 'Curve does not fit',
  repeatability: 'Repeatability',
  resolution: 'Resolution of the reading',
  zero: 'Zero',
  reversibility: 'Reversibility',
  creep: 'Creep',
}

/** An uncertainty in percent, k = 2; null where it cannot be said. */
export function uncertaintyText(percent: number | null): string {
  return percent === null ? 'not known' : `±${writeNumber(percent, 2)} %`
}

/** Why a calibration states no uncertainty. */
export const noUncertaintyWords = 'No uncertainty can be stated: there is no verified range or no repeat.'
