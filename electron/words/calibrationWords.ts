import type {
  AccuracyClass,
  CalibrationAssessment,
  CalibrationReading,
  LoadDirection,
  UncertaintySource,
  WeightMaterial,
} from '#contract/calibration/calibration.ts'
import type { Verification } from '#contract/calibration/calibrationUse.ts'
import { type Quantity, writeFixed, writeNumber } from './quantities.ts'

export const directionWords: Record<LoadDirection, string> = { up: 'going up', down: 'going down' }

export const standingWords: Record<CalibrationReading['standing'], string> = {
  used: 'used',
  replaced: 'replaced by a later one',
  'broken-off': 'of a run that was broken off',
}

export const materialNames: readonly WeightMaterial[] = [
  'cast iron',
  'steel',
  'stainless steel',
  'brass',
  'nickel silver',
]

/** Where a share of the uncertainty comes from, in words. */
export const sourceWords: Record<UncertaintySource, string> = {
  weights: 'Mass of the weights',
  buoyancy: 'Buoyancy of the air',
  lever: 'Lever ratio',
  gravity: 'Local gravity',
  fit: 'Curve through the readings',
  'lack-of-fit': 'Curve does not fit',
  repeatability: 'Repeatability',
  resolution: 'Resolution of the reading',
  zero: 'Zero',
  reversibility: 'Reversibility',
  creep: 'Creep',
}

export const degreeWords = { 1: 'straight line', 2: 'parabola', 3: 'cubic' } as const

/** A class as it stands behind a number. */
export function classWords(accuracy: AccuracyClass): string {
  return accuracy === 'none' ? 'no class' : `class ${accuracy}`
}

/** A known load, with the hundredths that weights can tell. */
export function loadText(forceN: number, force: Quantity): string {
  const shown = forceN * force.factor
  return `${writeFixed(shown, shown >= 1000 ? 1 : 2)}\u00a0${force.unit}`
}

/** A stack of weights by their names; no weights: the zero point. */
export function stackWords(names: readonly string[]): string {
  return names.length === 0 ? 'no weights' : names.join(' + ')
}

/** A range of forces; null where there is none. */
export function rangeText(rangeN: readonly [number, number] | null, force: Quantity): string {
  if (rangeN === null) return 'none'
  return `${force.number(rangeN[0])} to ${force.text(rangeN[1])}`
}

/** An uncertainty in percent, k = 2; null where it cannot be said. */
export function uncertaintyText(percent: number | null): string {
  return percent === null ? 'not known' : `±${writeNumber(percent, 2)} %`
}

/** A change with its sign; null: there is nothing before it. */
export function signedNumber(value: number | null, decimals: number): string {
  if (value === null) return '–'
  const text = writeFixed(value, decimals)
  return value > 0 && Number(value.toFixed(decimals)) !== 0 ? `+${text}` : text
}

/** What the calibration says of this one force, in one sentence. */
export function verificationWords(verification: Verification, force: Quantity): string {
  const { verifiedRangeN, timesVerified, expandedUncertaintyN, expandedUncertaintyPercent } = verification
  if (verifiedRangeN === null)
    return 'The calibration has no verified range, so nothing is known of how true this force is.'
  if (timesVerified !== null && timesVerified > 1)
    return `${writeNumber(timesVerified, 2)} times the highest weight ever hung on this cell (${force.text(verifiedRangeN[1])}). Above it nothing was checked: the force is the curve drawn further.`
  if (expandedUncertaintyN === null)
    return `Outside the verified range of ${rangeText(verifiedRangeN, force)}: how true this force is was not checked.`
  return `True within ±${force.text(expandedUncertaintyN)}${expandedUncertaintyPercent === null ? '' : ` (${writeNumber(expandedUncertaintyPercent, 2)} %)`}, k = 2.`
}

/** The day of an instant, for tables and figures: "25 Nov 2026". */
export function dayWords(instant: string): string {
  return new Date(instant).toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' })
}

/** Whether a lack of fit speaks against a curve, with its figures. */
export function lackOfFitWords(test: CalibrationAssessment['lackOfFit']): string {
  if (test === null) return 'could not be tested: no step was repeated'
  const p = test.pValue < 0.001 ? 'p < 0.001' : `p = ${writeNumber(test.pValue, 3)}`
  return `F(${test.lackDegreesOfFreedom}, ${test.pureDegreesOfFreedom}) = ${writeNumber(test.f, 2)}, ${p}${test.pValue < 0.05 ? ', significant' : ', not significant'}`
}
