import { inUnit } from '#words/units/notANumber.ts'
import type { Quantities } from '#words/units/quantities.ts'
import { readQuantity } from '#words/units/typedQuantity.ts'
import type { UnitFields } from '../forms/typedTexts.ts'

/** Rated load and scale as they are typed. */
export type ForceTexts = { capacity: string; scale: string }

export const forceUnits: UnitFields<keyof ForceTexts> = {
  capacity: ({ force }) => force,
  scale: ({ forcePerCount }) => forcePerCount,
}

/** A typed rated load in newtons, or one clear sentence. An empty text means unknown. */
export function readCapacity(text: string, { force }: Quantities): { capacityN: number | null } | { error: string } {
  const read = readQuantity(text, force, `the rated load ${inUnit(force.unit)}`)
  if ('error' in read) return read
  return read.stored === null || read.stored > 0
    ? { capacityN: read.stored }
    : { error: `The rated load must be more than 0 ${force.unit}.` }
}

/** A typed scale in newtons per count, or one clear sentence. An empty text means none; a negative one is a cell wired in reverse. */
export function readScale(
  text: string,
  { force, forcePerCount }: Quantities,
): { nPerCount: number | null } | { error: string } {
  const read = readQuantity(text, forcePerCount, `what a count is worth in ${force.unit}, as in 0.0125`)
  if ('error' in read) return read
  if (read.stored === 0) return { error: 'The scale must not be 0. Leave it empty if it is not known.' }
  return { nPerCount: read.stored }
}
