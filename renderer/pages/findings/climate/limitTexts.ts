import { type ClimateLimits, climateLimits } from '#contract/findings/climate.ts'
import type { Quantity } from '#words/units/quantities.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'

export type LimitName = keyof ClimateLimits

/** A limit as it is typed, read in the units of the person; an error where it is no number or none that air has. */
export function readLimit(
  name: LimitName,
  text: string,
  temperature: Pick<Quantity, 'unit' | 'factor' | 'zeroAt'>,
): { limit: number } | { error: string } {
  const isTemperature = name.startsWith('temperature')
  const unit = isTemperature ? temperature : { unit: '%', factor: 1 }
  const read = readQuantity(text, unit, isTemperature ? 'a temperature' : 'a percentage')
  if ('error' in read) return read
  const known = climateLimits.shape[name].safeParse(read.stored ?? Number.NaN)
  return known.success ? { limit: known.data } : { error: 'Write a value that the air of a store can have.' }
}
