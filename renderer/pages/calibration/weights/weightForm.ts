import type { WeightEntry } from '#contract/calibration/weight.ts'
import { type OimlClass, oimlClass, type WeightMaterial, weightMaterial } from '#contract/calibration/weight.ts'
import { notANumber } from '#words/units/notANumber.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { readNumber } from '../../../widgets/typedNumber.ts'

/** A weight as typed: every field a text. `own` and `typed` are the ways out of a table. */
export type WeightTexts = {
  name: string
  nominal: string
  conventional: string
  class: OimlClass | 'own'
  halfWidthG: string
  material: WeightMaterial | 'typed'
  density: string
}
export type WeightErrors = Partial<Record<keyof WeightTexts, string>>

export const emptyWeight: WeightTexts = {
  name: '',
  nominal: '',
  conventional: '',
  class: 'M1',
  halfWidthG: '',
  material: 'cast iron',
  density: '',
}

const written = (value: number) => String(Number(value.toPrecision(9)))

/** The form that shows a kept weight. */
export function textsOfWeight(weight: WeightEntry, mass: Quantity): WeightTexts {
  return {
    name: weight.name,
    nominal: written(weight.nominalKg * mass.factor),
    conventional: weight.conventionalMassKg === null ? '' : written(weight.conventionalMassKg * mass.factor),
    class: weight.tolerance.kind === 'oiml' ? weight.tolerance.class : 'own',
    halfWidthG: weight.tolerance.kind === 'oiml' ? '' : written(weight.tolerance.halfWidthKg * 1000),
    material: weight.density.kind === 'material' ? weight.density.material : 'typed',
    density: weight.density.kind === 'material' ? '' : written(weight.density.kgPerM3),
  }
}

/** The weight that a form says, or one clear sentence for each field that cannot be. `others`: names that are taken. */
export function readWeight(
  texts: WeightTexts,
  others: readonly string[],
  mass: Quantity,
): { weight: WeightEntry; errors: null } | { weight: null; errors: WeightErrors } {
  const errors: WeightErrors = {}
  const number = (key: 'nominal' | 'conventional' | 'halfWidthG' | 'density', unit: string, what: string) => {
    const typed = readNumber(texts[key])
    if (typed === undefined) errors[key] = notANumber(texts[key], `${what} in ${unit}`)
    return typed ?? null
  }
  const name = texts.name.trim()
  if (name === '') errors.name = 'Give it the name that is marked on it.'
  else if (others.includes(name))
    errors.name = `There is a weight “${name}” already. Mark this one with another name, as “${name} b”.`
  const nominal = number('nominal', mass.unit, 'the nominal mass')
  if (nominal === null) errors.nominal ??= `Write the mass marked on it, in ${mass.unit}.`
  else if (nominal <= 0) errors.nominal = `A weight must be heavier than 0 ${mass.unit}.`
  const conventional = number('conventional', mass.unit, 'the mass on its certificate')
  if (conventional !== null && nominal !== null && nominal > 0 && Math.abs(conventional - nominal) > 0.2 * nominal)
    errors.conventional = 'This is more than 20 % from the nominal mass. Look which of the two is wrong.'
  const isOwn = texts.class === 'own'
  const halfWidthG = isOwn ? number('halfWidthG', 'g', 'the tolerance') : null
  if (isOwn && halfWidthG === null) errors.halfWidthG ??= 'Write by how many grams it may be off.'
  else if (isOwn && halfWidthG !== null && halfWidthG < 0) errors.halfWidthG = 'The tolerance must be 0 g or more.'
  const isTyped = texts.material === 'typed'
  const density = isTyped ? number('density', 'kg/m³', 'the density') : null
  if (isTyped && density === null) errors.density ??= 'Write the density, or choose the material.'
  else if (isTyped && density !== null && (density < 900 || density > 22_000))
    errors.density = 'Between 900 and 22 000 kg/m³; steel has 7800.'
  if (Object.keys(errors).length > 0 || nominal === null) return { weight: null, errors }
  const oiml = oimlClass.safeParse(texts.class)
  const material = weightMaterial.safeParse(texts.material)
  return {
    errors: null,
    weight: {
      name,
      nominalKg: nominal / mass.factor,
      conventionalMassKg: conventional === null ? null : conventional / mass.factor,
      tolerance: oiml.success
        ? { kind: 'oiml', class: oiml.data }
        : { kind: 'own', halfWidthKg: (halfWidthG ?? 0) / 1000 },
      density: material.success
        ? { kind: 'material', material: material.data }
        : { kind: 'typed', kgPerM3: density ?? 0 },
    },
  }
}

/** Weights as found in many workshops, so that nobody has to begin with an empty page. */
export const usualWeights: readonly WeightEntry[] = [1, 2, 5, 10, 20, 20].map((nominalKg, index) => ({
  name: index === 5 ? `${nominalKg} kg b` : `${nominalKg} kg`,
  nominalKg,
  conventionalMassKg: null,
  tolerance: { kind: 'oiml', class: 'M1' },
  density: { kind: 'material', material: 'cast iron' },
}))
