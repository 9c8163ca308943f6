import { type GlueUpFields, glueUpFields } from '#contract/programme/glueUp.ts'
import { inUnit } from '#words/units/notANumber.ts'
import { type Quantities, quantitiesIn } from '#words/units/quantities.ts'
import { type FieldUnit, keptText, noUnit, readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../../../parts/forms/typedTexts.ts'

/** The glue-up as typed. */
export type GlueUpTexts = {
  gluedOn: string
  temperatureC: string
  humidityPercent: string
  spreadGPerM2: string
  openTimeMin: string
  clampTimeMin: string
  pressureMPa: string
  woodMoisturePercent: string
  people: string
  notes: string
  /** By adhesive. */
  lots: Readonly<Record<string, string>>
  /** Where the blocks go, by exposure. */
  places: Readonly<Record<string, string>>
}

export type GlueUpTextKey = Exclude<keyof GlueUpTexts, 'lots' | 'places'>
type NumberKey = Exclude<GlueUpTextKey, 'gluedOn' | 'people' | 'notes'>
export type GlueUpErrors = Partial<Record<GlueUpTextKey, string>>

/** A form that says the day alone. */
export function emptyGlueUp(gluedOn: string): GlueUpTexts {
  return {
    ...{ gluedOn, temperatureC: '', humidityPercent: '', spreadGPerM2: '', openTimeMin: '', clampTimeMin: '' },
    ...{ pressureMPa: '', woodMoisturePercent: '', people: '', notes: '', lots: {}, places: {} },
  }
}

/** What is kept of a glue-up as its form shows it, in SI units with every digit. */
export function textsOfGlueUp(fields: GlueUpFields): GlueUpTexts {
  const numbers = Object.fromEntries(
    (Object.keys(glueUpNumbers) as NumberKey[]).map((key) => [
      key,
      keptText(fields[key], glueUpNumbers[key].unit(quantitiesIn('SI'))),
    ]),
  )
  return {
    ...emptyGlueUp(fields.gluedOn),
    ...numbers,
    people: fields.people,
    notes: fields.notes,
    lots: Object.fromEntries(fields.lots.map(({ adhesive, lot }) => [adhesive, lot])),
  }
}

const percent: FieldUnit = { unit: '%', factor: 1 }
const minutes: FieldUnit = { unit: 'min', factor: 1 }

/** The unit of each number, what it is called in a sentence, and what it cannot be. */
export const glueUpNumbers: Record<
  NumberKey,
  { unit(quantities: Quantities): FieldUnit; called: string; least: number; most: number }
> = {
  temperatureC: { unit: ({ temperature }) => temperature, called: 'temperature', least: -50, most: 100 },
  humidityPercent: { unit: () => percent, called: 'relative humidity', least: 0, most: 100 },
  spreadGPerM2: { unit: () => ({ ...noUnit, unit: 'g/m²' }), called: 'spread', least: 0, most: 10_000 },
  openTimeMin: { unit: () => minutes, called: 'open time', least: 0, most: 100_000 },
  clampTimeMin: { unit: () => minutes, called: 'clamp time', least: 0, most: 1_000_000 },
  pressureMPa: { unit: ({ strength }) => strength, called: 'pressure', least: 0, most: 100 },
  woodMoisturePercent: { unit: () => percent, called: 'moisture of the wood', least: 0.1, most: 200 },
}

/** The fields whose unit follows the program's. */
export const glueUpUnits: UnitFields<keyof GlueUpTexts> = {
  temperatureC: glueUpNumbers.temperatureC.unit,
  pressureMPa: glueUpNumbers.pressureMPa.unit,
}

/** What a form says, with the lots of these adhesives alone; or one clear sentence for each field that cannot be. */
export function readGlueUp(
  texts: GlueUpTexts,
  adhesives: readonly string[],
  quantities: Quantities,
): { fields: GlueUpFields; errors: null } | { fields: null; errors: GlueUpErrors } {
  const errors: GlueUpErrors = {}
  const numbers = Object.fromEntries(
    (Object.keys(glueUpNumbers) as NumberKey[]).map((key) => {
      const { called, least, most, unit } = glueUpNumbers[key]
      const field = unit(quantities)
      const read = readQuantity(texts[key], field, `the ${called} ${inUnit(field.unit)}`)
      if ('error' in read) errors[key] = read.error
      else if (read.stored !== null && (read.stored < least || read.stored > most))
        errors[key] = `No ${called} is that: look at the number and its unit.`
      return [key, 'error' in read ? null : read.stored]
    }),
  )
  const lots = adhesives
    .map((adhesive) => ({ adhesive, lot: (texts.lots[adhesive] ?? '').trim() }))
    .filter(({ lot }) => lot !== '')
  const parsed = glueUpFields.safeParse({
    ...numbers,
    gluedOn: texts.gluedOn,
    people: texts.people,
    notes: texts.notes,
    lots,
  })
  if (!parsed.success)
    for (const { path } of parsed.error.issues) {
      const key = path[0] as GlueUpTextKey
      errors[key] ??= key === 'gluedOn' ? 'Choose the day of the glue-up.' : 'That is too long to be kept.'
    }
  if (!parsed.success || Object.keys(errors).length > 0) return { fields: null, errors }
  return { fields: parsed.data, errors: null }
}
