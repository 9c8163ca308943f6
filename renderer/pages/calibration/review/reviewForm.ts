import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'

/** A typed resolution in the unit of the reading, or one clear sentence; nothing typed: not known. */
export function readResolution(text: string, unit: ReadingUnit): { resolution: number | null } | { error: string } {
  const read = readQuantity(text, { unit, factor: 1 }, `the resolution of the reading in ${unit}`)
  if ('error' in read) return read
  return read.stored === null || read.stored > 0
    ? { resolution: read.stored }
    : { error: 'The resolution must be more than 0; leave it empty if it is not known.' }
}

/** The name that a calibration gets if nobody thinks of a better one. */
export function proposedName(now: Date): string {
  return `Weights of ${now.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })}`
}

/** The temperature at the end, °C, or one clear sentence; nothing typed: nobody looked. */
export function readTemperature(
  text: string,
  temperature: Quantity,
): { temperatureC: number | null } | { error: string } {
  const read = readQuantity(text, temperature, `the temperature in ${temperature.unit}`)
  return 'error' in read ? read : { temperatureC: read.stored }
}

/** A year from now, the usual interval (common practice, no source), as a date field wants it. */
export function proposedDueDate(now: Date): string {
  return new Date(Date.UTC(now.getFullYear() + 1, now.getMonth(), now.getDate())).toISOString().slice(0, 10)
}
