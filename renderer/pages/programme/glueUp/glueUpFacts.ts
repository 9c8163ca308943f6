import type { GlueUpFields } from '#contract/programme/glueUp.ts'
import { calendarDayWords } from '#words/units/calendarDays.ts'
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

/** What a correction changed, each as it was before; '–' where nobody had written it. */
export function changedFacts(was: GlueUpFields, is: GlueUpFields, quantities: Quantities): string {
  const [before, after] = [was, is].map(
    (fields) => new Map([['Glued on', calendarDayWords(fields.gluedOn)], ...glueUpFacts(fields, quantities)]),
  ) as [Map<string, string>, Map<string, string>]
  return [...new Set([...before.keys(), ...after.keys()])]
    .filter((name) => before.get(name) !== after.get(name))
    .map((name) => `${name}: ${before.get(name) ?? '–'}`)
    .join(', ')
}
