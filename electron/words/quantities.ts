import { createContext, useContext } from 'react'
import type { Preferences } from '#contract/settings/settings.ts'
import {
  megapascalsPerPsi,
  millimetresPerInch,
  newtonsPerPoundForce,
  squareMillimetresPerSquareInch,
  standardGravityMPerS2,
} from '#domain/units/factors.ts'

type UnitSystem = Preferences['units']

/** How quantities are written in one system of units. Stored values are SI; null is written as a dash. */
export type Quantities = {
  system: UnitSystem
  force: Quantity
  strength: Quantity
  length: Quantity
  area: Quantity
  mass: Quantity
  energy: Quantity
}

export type Quantity = {
  unit: string
  /** Shown value = stored value x factor. */
  factor: number
  /** The stored value as shown, without its unit. */
  number(stored: number | null): string
  /** The stored value as shown, with its unit. */
  text(stored: number | null): string
}

const dash = '–'

/** A number with about four significant figures and never more decimals than `most`, thousands set apart by a thin space. */
export function writeNumber(value: number, most: number): string {
  const size = Math.abs(value)
  const decimals = Math.min(most, size >= 1000 ? 0 : size >= 100 ? 1 : size >= 10 ? 2 : 3)
  return writeFixed(value, decimals)
}

/** A limit above 0 as `writeNumber` writes it; one that would read as 0 is written as "below 0.01". */
export function writeLimit(value: number, most: number): string {
  const least = 10 ** -Math.min(most, 3)
  return value > 0 && value < least / 2 ? `below ${least}` : writeNumber(value, most)
}

/** A number with so many decimals, thousands set apart by a thin space, a true minus sign and never "-0". */
export function writeFixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals)
  const [whole = '0', fraction] = text.split('.')
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u2009') : whole
  const sign = value < 0 && Number(text) !== 0 ? '−' : ''
  return fraction === undefined ? sign + grouped : `${sign}${grouped}.${fraction}`
}

/** How many there are of something, written as any other number is. */
export function writeCount(count: number): string {
  return writeFixed(count, 0)
}

function quantity(unit: string, factor: number, mostDecimals: number): Quantity {
  const number = (stored: number | null) => (stored === null ? dash : writeNumber(stored * factor, mostDecimals))
  return {
    unit,
    factor,
    number,
    text: (stored) => (stored === null ? dash : `${number(stored)}\u00a0${unit}`),
  }
}

/** What a person measured and typed: written without zeros that nobody measured. */
function measured(unit: string, factor: number, decimals: number): Quantity {
  const number = (stored: number | null) =>
    stored === null ? dash : withoutEndingZeros(writeFixed(stored * factor, decimals))
  return { unit, factor, number, text: (stored) => (stored === null ? dash : `${number(stored)}\u00a0${unit}`) }
}

/** "600.0" becomes "600", "1.50" becomes "1.5". */
export function withoutEndingZeros(written: string): string {
  return written.includes('.') ? written.replace(/\.?0+$/, '') : written
}

/**
 * A stored value as it stands in a field to be typed over; null: an empty one. Six significant digits: enough for any ruler,
 * and a round trip through inches gives the same millimetres back.
 */
export function writeTyped(stored: number | null, factor: number): string {
  return stored === null ? '' : String(Number((stored * factor).toPrecision(6)))
}

const systems: Record<UnitSystem, Quantities> = {
  SI: {
    system: 'SI',
    force: quantity('N', 1, 1),
    strength: quantity('MPa', 1, 2),
    length: measured('mm', 1, 2),
    area: measured('mm²', 1, 1),
    mass: measured('kg', 1, 6),
    energy: quantity('J', 1, 2),
  },
  US: {
    system: 'US',
    force: quantity('lbf', 1 / newtonsPerPoundForce, 1),
    strength: quantity('psi', 1 / megapascalsPerPsi, 0),
    length: measured('in', 1 / millimetresPerInch, 3),
    area: measured('in²', 1 / squareMillimetresPerSquareInch, 4),
    // A pound is the mass that weighs one pound-force under standard gravity.
    mass: measured('lb', standardGravityMPerS2 / newtonsPerPoundForce, 5),
    // 1 J = 1 N m = 1000 N mm
    energy: quantity('in·lbf', 1000 / (newtonsPerPoundForce * millimetresPerInch), 2),
  },
}

/** The quantities of a system of units. */
export function quantitiesIn(system: UnitSystem): Quantities {
  return systems[system]
}

export const QuantitiesContext = createContext<Quantities>(systems.SI)

/** The quantities in the units that the whole program shows. */
export function useQuantities(): Quantities {
  return useContext(QuantitiesContext)
}
