import type { Preferences } from '#contract/settings/settings.ts'
import {
  megapascalsPerPsi,
  millimetresPerInch,
  newtonsPerPoundForce,
  squareMillimetresPerSquareInch,
  standardGravityMPerS2,
} from '#domain/units/factors.ts'
import { withoutEndingZeros, writeFixed, writeNumber } from './numbers.ts'

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
