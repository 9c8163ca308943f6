import type { GlueUpFields } from '#contract/programme/glueUp.ts'
import type { Quantities } from '#words/units/quantities.ts'

/** What is known of how a glue-up was done, line by line; what nobody wrote is left out. */
export function glueUpFacts(
  fields: GlueUpFields,
  { temperature, strength }: Quantities,
): [name: string, words: string][] {
  const inUnit = (value: number | null, unit: string) => (value === null ? '' : `${value}\u00a0${unit}`)
  const facts: [string, string][] = [
    ['Lots', fields.lots.map(({ adhesive, lot }) => `${adhesive}: ${lot}`).join(', ')],
    ['Temperature', fields.temperatureC === null ? '' : temperature.text(fields.temperatureC)],
    ['Relative humidity', inUnit(fields.humidityPercent, '%')],
    ['Moisture of the wood', inUnit(fields.woodMoisturePercent, '%')],
    ['Spread', inUnit(fields.spreadGPerM2, 'g/m²')],
    ['Open time', inUnit(fields.openTimeMin, 'min')],
    ['Clamp time', inUnit(fields.clampTimeMin, 'min')],
    ['Pressure', fields.pressureMPa === null ? '' : strength.text(fields.pressureMPa)],
    ['People', fields.people],
    ['Notes', fields.notes],
  ]
  return facts.filter(([, words]) => words !== '')
}
