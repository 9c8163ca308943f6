import {
  inchesFromMillimetres,
  millimetresFromInches,
  newtonsFromPoundsForce,
  poundsForceFromNewtons,
  psiFromMegapascals,
  squareInchesFromSquareMillimetres,
} from './conversions.ts'

/** The one switch of the program. */
export type UnitSystem = 'SI' | 'US'

/** A number as it is shown, and the unit behind it. */
export type Shown = { value: string; unit: string }

const shownAs = (value: number, digits: number, unit: string): Shown => ({
  value: withSignificantDigits(value, digits),
  unit,
})

/**
 * A number in plain decimals with at least so many significant digits: whole digits are never rounded away, zeros behind
 * the point are kept, no exponent is used, and what rounds to nothing is 0 without a sign.
 * Throws RangeError for a number that is not finite or for digits outside 1 to 15.
 * Checked: tests/domain/units/display.spec.ts by hand-rounded values.
 */
export function withSignificantDigits(value: number, digits: number): string {
  if (!Number.isFinite(value)) throw new RangeError('withSignificantDigits requires a finite number')
  if (!(Number.isInteger(digits) && digits >= 1 && digits <= 15))
    throw new RangeError('withSignificantDigits requires 1 to 15 digits')
  if (value === 0) return '0'
  // Taken from the rounded number: 9.996 with three digits is 10.0, not 10.00.
  const exponent = Number(value.toExponential(digits - 1).split('e')[1])
  const decimals = Math.min(12, Math.max(0, digits - 1 - exponent))
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? '0' : text
}

/** Force for people: N below 10 kN, kN from there on, or lbf; four digits. Minus stands before a pull. */
export function formatForce(forceN: number, units: UnitSystem): Shown {
  if (units === 'US') return shownAs(poundsForceFromNewtons(forceN), 4, 'lbf')
  return Math.abs(forceN) < 9999.5 ? withTenths(forceN, 'N') : shownAs(forceN / 1000, 4, 'kN')
}

/** A force of a few newtons is shown to a tenth at best: more would be noise. */
function withTenths(value: number, unit: string): Shown {
  return Math.abs(value) < 100 ? { value: fixed(value, 1), unit } : shownAs(value, 4, unit)
}

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals)
  return Number(text) === 0 ? (0).toFixed(decimals) : text
}

/** Force for the large read-out, of even width while it changes: whole N, or lbf to one decimal below 1000. */
export function formatLiveForce(forceN: number, units: UnitSystem): Shown {
  if (units === 'SI') return { value: fixed(forceN, Math.abs(forceN) < 100 ? 1 : 0), unit: 'N' }
  const forceLbf = poundsForceFromNewtons(forceN)
  return { value: fixed(forceLbf, Math.abs(forceLbf) < 1000 ? 1 : 0), unit: 'lbf' }
}

/** Shear strength for people: MPa with two decimals, or whole psi. */
export function formatStrength(strengthMPa: number, units: UnitSystem): Shown {
  return units === 'SI'
    ? { value: fixed(strengthMPa, 2), unit: 'MPa' }
    : { value: fixed(psiFromMegapascals(strengthMPa), 0), unit: 'psi' }
}

/** Length for people: mm with two decimals as a calliper gives them, or in with three. */
export function formatLength(lengthMm: number, units: UnitSystem): Shown {
  return units === 'SI'
    ? { value: fixed(lengthMm, 2), unit: 'mm' }
    : { value: fixed(inchesFromMillimetres(lengthMm), 3), unit: 'in' }
}

/** Area for people: mm² with one decimal, or in² with four significant digits. */
export function formatArea(areaMm2: number, units: UnitSystem): Shown {
  return units === 'SI'
    ? { value: fixed(areaMm2, 1), unit: 'mm²' }
    : shownAs(squareInchesFromSquareMillimetres(areaMm2), 4, 'in²')
}

/** Loading rate for people: N/s or lbf/s, three digits. */
export function formatLoadingRate(rateNPerS: number, units: UnitSystem): Shown {
  return units === 'SI' ? shownAs(rateNPerS, 3, 'N/s') : shownAs(poundsForceFromNewtons(rateNPerS), 3, 'lbf/s')
}

/** What a length typed in the shown unit is in mm. */
export const lengthMmFromShown = (length: number, units: UnitSystem): number =>
  units === 'SI' ? length : millimetresFromInches(length)

/** What a force typed in the shown unit (N or lbf) is in N. */
export const forceNFromShown = (force: number, units: UnitSystem): number =>
  units === 'SI' ? force : newtonsFromPoundsForce(force)
