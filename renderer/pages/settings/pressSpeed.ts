import { notANumber } from '#words/units/notANumber.ts'
import { readNumber } from '../../widgets/typedNumber.ts'

/** A typed press speed in shown units as mm/s, or one clear sentence. An empty text means unknown. */
export function readPressSpeed(
  text: string,
  factor: number,
  unit: string,
): { pressSpeedMmPerS: number | null } | { error: string } {
  const typed = readNumber(text)
  if (typed === undefined) return { error: notANumber(text, `the speed in ${unit}`) }
  if (typed === null) return { pressSpeedMmPerS: null }
  return typed > 0 ? { pressSpeedMmPerS: typed / factor } : { error: `The speed must be more than 0 ${unit}.` }
}
