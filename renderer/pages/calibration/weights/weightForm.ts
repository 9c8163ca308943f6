import type { WeightEntry } from '#contract/calibration/weight.ts'
import { type OimlClass, oimlClass, type WeightMaterial, weightMaterial } from '#contract/calibration/weight.ts'
import { kilogramsPerPound } from '#domain/units/factors.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { type Quantities, type Quantity, quantitiesIn } from '#words/units/quantities.ts'
import { keptText, readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../../parts/forms/typedTexts.ts'

/** A weight as typed: every field a text. `own` and `typed` are the ways out of a table. */
export type WeightTexts = {
  name: string
  nominal: string
  conventional: string
  class: OimlClass | 'own'
  halfWidth: string
  material: WeightMaterial | 'typed'
  density: string
}
export type WeightErrors = Partial<Record<keyof WeightTexts, string>>

export const emptyWeight: WeightTexts = {
  name: '',
  nominal: '',
  conventional: '',
  class: 'M1',
  halfWidth: '',
  material: 'cast iron',
  density: '',
}

/** The fields whose unit follows the units of the program. */
export const weightUnits: UnitFields<keyof WeightTexts> = {
  nominal: ({ mass }) => mass,
  conventional: ({ mass }) => mass,
  halfWidth: ({ smallMass }) => smallMass,
  density: ({ density }) => density,
}

/** A kept weight as a form begins with it, in SI units. */
export function textsOfWeight(weight: WeightEntry): WeightTexts {
  const { mass, smallMass, density } = quantitiesIn('SI')
  return {
    name: weight.name,
    nominal: keptText(weight.nominalKg, mass),
    conventional: keptText(weight.conventionalMassKg, mass),
    class: weight.tolerance.kind === 'oiml' ? weight.tolerance.class : 'own',
    halfWidth: weight.tolerance.kind === 'oiml' ? '' : keptText(weight.tolerance.halfWidthKg, smallMass),
    material: weight.density.kind === 'material' ? weight.density.material : 'typed',
    density: weight.density.kind === 'material' ? '' : keptText(weight.density.kgPerM3, density),
  }
}

/**
 * The weight that a form says, or one clear sentence for each field that cannot be. `texts`: as they are read; `others`: names
 * that are taken.
 */
export function readWeight(
  texts: WeightTexts,
  others: readonly string[],
  { mass, smallMass, density: densities }: Quantities,
): { weight: WeightEntry; errors: null } | { weight: null; errors: WeightErrors } {
  const errors: WeightErrors = {}
  const number = (key: 'nominal' | 'conventional' | 'halfWidth' | 'density', unit: Quantity, what: string) => {
    const read = readQuantity(texts[key], unit, `${what} ${inUnit(unit.unit)}`)
    if ('error' in read) errors[key] = read.error
    return 'error' in read ? null : read.stored
  }
  const name = texts.name.trim()
  if (name === '') errors.name = 'Give it the name that is marked on it.'
  else if (others.includes(name))
    errors.name = `There is a weight “${name}” already. Mark this one with another name, as “${name} b”.`
  const nominal = number('nominal', mass, 'the nominal mass')
  if (nominal === null) errors.nominal ??= `Write the mass marked on it, in ${mass.unit}.`
  else if (nominal <= 0) errors.nominal = `A weight must be heavier than 0 ${mass.unit}.`
  const conventional = number('conventional', mass, 'the mass on its certificate')
  if (conventional !== null && nominal !== null && nominal > 0 && Math.abs(conventional - nominal) > 0.2 * nominal)
    errors.conventional = 'This is more than 20 % from the nominal mass. Look which of the two is wrong.'
  const isOwn = texts.class === 'own'
  const halfWidthKg = isOwn ? number('halfWidth', smallMass, 'the tolerance') : null
  if (isOwn && halfWidthKg === null) errors.halfWidth ??= `Write by how many ${smallMass.unit} it may be off.`
  else if (isOwn && halfWidthKg !== null && halfWidthKg < 0)
    errors.halfWidth = `The tolerance must be 0 ${smallMass.unit} or more.`
  const isTyped = texts.material === 'typed'
  const density = isTyped ? number('density', densities, 'the density') : null
  if (isTyped && density === null) errors.density ??= 'Write the density, or choose the material.'
  else if (isTyped && density !== null && (density < 900 || density > 22_000))
    errors.density = `Between ${densities.number(900)} and ${densities.text(22_000)}; steel has ${densities.number(7800)}.`
  if (Object.keys(errors).length > 0 || nominal === null) return { weight: null, errors }
  const oiml = oimlClass.safeParse(texts.class)
  const material = weightMaterial.safeParse(texts.material)
  return {
    errors: null,
    weight: {
      name,
      nominalKg: nominal,
      conventionalMassKg: conventional,
      tolerance: oiml.success ? { kind: 'oiml', class: oiml.data } : { kind: 'own', halfWidthKg: halfWidthKg ?? 0 },
      density: material.success
        ? { kind: 'material', material: material.data }
        : { kind: 'typed', kgPerM3: density ?? 0 },
    },
  }
}

/** Weights as found in many workshops, so that nobody has to begin with an empty page. */
export const usualWeights: Readonly<Record<Quantities['system'], readonly WeightEntry[]>> = {
  SI: castIron([1, 2, 5, 10, 20, 20], 'kg', 1, () => ({ kind: 'oiml', class: 'M1' })),
  // OIML R 111 has no limits for pounds
  US: castIron([2, 5, 10, 25, 50, 50], 'lb', kilogramsPerPound, (kg) => ({ kind: 'own', halfWidthKg: kg / 10_000 })),
}

function castIron(
  masses: readonly number[],
  unit: string,
  kilograms: number,
  toleranceOf: (kg: number) => WeightEntry['tolerance'],
): WeightEntry[] {
  return masses.map((mass, index) => ({
    name: `${mass} ${unit}${masses.indexOf(mass) < index ? ' b' : ''}`,
    nominalKg: mass * kilograms,
    conventionalMassKg: null,
    tolerance: toleranceOf(mass * kilograms),
    density: { kind: 'material', material: 'cast iron' },
  }))
}
