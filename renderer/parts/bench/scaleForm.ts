import { notANumber } from '#words/units/notANumber.ts'
import { readNumber } from '../../widgets/typedNumber.ts'

/** A typed rated load in shown units as newtons, or one clear sentence. An empty text means unknown. */
export function readCapacity(
  text: string,
  factor: number,
  unit: string,
): { capacityN: number | null } | { error: string } {
  const typed = readNumber(text)
  if (typed === undefined) return { error: notANumber(text, `the rated load in ${unit}`) }
  if (typed === null) return { capacityN: null }
  return typed > 0 ? { capacityN: typed / factor } : { error: `The rated load must be more than 0 ${unit}.` }
}

/** A typed scale in newtons per count, or one clear sentence. An empty text means none; a negative one is a cell wired in reverse. */
export function readScale(text: string): { nPerCount: number | null } | { error: string } {
  const typed = readNumber(text)
  if (typed === undefined) return { error: notANumber(text, 'newtons per count, as in 0.0125') }
  if (typed === 0) return { error: 'The scale must not be 0. Leave it empty if it is not known.' }
  return { nPerCount: typed }
}
