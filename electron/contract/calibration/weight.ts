import * as z from 'zod'
import { finite, id, isoInstant, kept, positive, words } from '../values.ts'

export const oimlClass = z.enum(['F1', 'F2', 'M1', 'M2', 'M3'])
export type OimlClass = z.infer<typeof oimlClass>

export const weightMaterial = z.enum(['cast iron', 'steel', 'stainless steel', 'brass', 'nickel silver'])
export type WeightMaterial = z.infer<typeof weightMaterial>

/** One weight of the kept set. */
export const weight = z.strictObject({
  name: words.min(1),
  nominalKg: positive,
  /** From its certificate or a scale; null: the nominal value is used. */
  conventionalMassKg: positive.nullable(),
  tolerance: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('oiml'), class: oimlClass }),
    /** Half-width of what is believed, kg. */
    z.strictObject({ kind: z.literal('own'), halfWidthKg: finite.nonnegative() }),
  ]),
  density: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('material'), material: weightMaterial }),
    z.strictObject({ kind: z.literal('typed'), kgPerM3: positive }),
  ]),
})
export type Weight = z.infer<typeof weight>

/** A weight as the person types it. Masses and densities are judged with a sentence of their own, so any number may come in. */
export const weightEntry = z.strictObject({
  name: words.min(1),
  nominalKg: finite,
  conventionalMassKg: finite.nullable().default(null),
  tolerance: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('oiml'), class: oimlClass }),
    z.strictObject({ kind: z.literal('own'), halfWidthKg: finite }),
  ]),
  density: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('material'), material: weightMaterial }),
    z.strictObject({ kind: z.literal('typed'), kgPerM3: finite }),
  ]),
})
export type WeightEntry = z.infer<typeof weightEntry>

/** The weights of the shop as they were saved at one time. */
export const weightSet = z.strictObject({
  weightSetId: id,
  recordedAt: isoInstant,
  by: kept,
  weights: z.array(weightEntry),
})
export type WeightSet = z.infer<typeof weightSet>

/** The weights of the shop as they were saved last; none were saved when savedAt is null. */
export const keptWeights = z.strictObject({
  weights: z.array(weightEntry),
  savedAt: isoInstant.nullable(),
  by: kept,
})
export type KeptWeights = z.infer<typeof keptWeights>
