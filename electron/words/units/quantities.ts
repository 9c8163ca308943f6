import type { Preferences } from '#contract/settings/settings.ts'
import {
  kilogramsPerM3PerPoundPerFt3,
  kilogramsPerOunce,
  megapascalsPerPsi,
  metresPerFoot,
  millimetresPerInch,
  newtonsPerPoundForce,
  squareMillimetresPerSquareInch,
  standardGravityMPerS2,
} from '#domain/units/factors.ts'
import { withoutEndingZeros, writeFixed, writeNumber, writeSignificant } from './numbers.ts'

type UnitSystem = Preferences['units']

/** How quantities are written in one system of units. Stored values are SI; null is written as a dash. */
export type Quantities = {
  system: UnitSystem
  force: Quantity
  strength: Quantity
  length: Quantity
  area: Quantity
  mass: Quantity
  /** By how much a weight may be off; stored in kg. */
  smallMass: Quantity
  density: Quantity
  energy: Quantity
  temperature: Quantity
  /** Above the sea; stored in m. */
  height: Quantity
  acceleration: Quantity
  pressSpeed: Quantity
  forcePerCount: Quantity
}

export type Quantity = {
  unit: string
  /** Shown value = stored value x factor + zeroAt (0 where there is none). */
  factor: number
  zeroAt?: number
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

/** Written with so many significant figures and no ending zeros. */
function significant(unit: string, factor: number, figures: number): Quantity {
  const number = (stored: number | null) =>
    stored === null ? dash : withoutEndingZeros(writeSignificant(stored * factor, figures))
  return { unit, factor, number, text: (stored) => (stored === null ? dash : `${number(stored)}\u00a0${unit}`) }
}

/** One decimal, as a thermometer has it. */
function temperature(unit: string, factor: number, zeroAt: number): Quantity {
  const number = (storedC: number | null) => (storedC === null ? dash : writeFixed(storedC * factor + zeroAt, 1))
  return { unit, factor, zeroAt, number, text: (stored) => (stored === null ? dash : `${number(stored)}\u00a0${unit}`) }
}

/** Grams, or milligrams below one. */
function grams(): Quantity {
  const number = (kg: number | null) => (kg === null ? dash : withoutEndingZeros(writeNumber(kg * 1000, 2)))
  const text = (kg: number | null) =>
    kg !== null && kg < 1e-3 ? `${withoutEndingZeros(writeNumber(kg * 1e6, 1))}\u00a0mg` : `${number(kg)}\u00a0g`
  return { unit: 'g', factor: 1000, number, text: (kg) => (kg === null ? dash : text(kg)) }
}

const systems: Record<UnitSystem, Quantities> = {
  SI: {
    system: 'SI',
    force: quantity('N', 1, 1),
    strength: quantity('MPa', 1, 2),
    length: measured('mm', 1, 2),
    area: measured('mm²', 1, 1),
    mass: measured('kg', 1, 6),
    smallMass: grams(),
    density: measured('kg/m³', 1, 3),
    energy: quantity('J', 1, 2),
    temperature: temperature('°C', 1, 0),
    height: measured('m', 1, 0),
    acceleration: measured('m/s²', 1, 5),
    pressSpeed: quantity('mm/min', 60, 2),
    forcePerCount: significant('N per count', 1, 6),
  },
  US: {
    system: 'US',
    force: quantity('lbf', 1 / newtonsPerPoundForce, 1),
    strength: quantity('psi', 1 / megapascalsPerPsi, 0),
    length: measured('in', 1 / millimetresPerInch, 3),
    area: measured('in²', 1 / squareMillimetresPerSquareInch, 4),
    // A pound is the mass that weighs one pound-force under standard gravity.
    mass: measured('lb', standardGravityMPerS2 / newtonsPerPoundForce, 5),
    smallMass: significant('oz', 1 / kilogramsPerOunce, 3),
    density: significant('lb/ft³', 1 / kilogramsPerM3PerPoundPerFt3, 5),
    // 1 J = 1 N m = 1000 N mm
    energy: quantity('in·lbf', 1000 / (newtonsPerPoundForce * millimetresPerInch), 2),
    temperature: temperature('°F', 9 / 5, 32),
    height: measured('ft', 1 / metresPerFoot, 0),
    acceleration: measured('ft/s²', 1 / metresPerFoot, 4),
    pressSpeed: quantity('in/min', 60 / millimetresPerInch, 3),
    forcePerCount: significant('lbf per count', 1 / newtonsPerPoundForce, 6),
  },
}

/** The quantities of a system of units. */
export function quantitiesIn(system: UnitSystem): Quantities {
  return systems[system]
}
