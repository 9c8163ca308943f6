import { inUnit } from '#words/units/notANumber.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'

/** A typed press speed as mm/s, or one clear sentence. An empty text means unknown. */
export function readPressSpeed(
  text: string,
  { pressSpeed }: Pick<Quantities, 'pressSpeed'>,
): { pressSpeedMmPerS: number | null } | { error: string } {
  const read = readQuantity(text, pressSpeed, `the speed ${inUnit(pressSpeed.unit)}`)
  if ('error' in read) return read
  return read.stored === null || read.stored > 0
    ? { pressSpeedMmPerS: read.stored }
    : { error: `The speed must be more than 0 ${pressSpeed.unit}.` }
}
