import * as z from 'zod'
import { finite, kept, positive } from '../values.ts'

/** Where the local gravity comes from. */
export const gravityChoice = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('latitude'),
    latitudeDeg: finite,
    heightM: finite,
    ellipsoid: z.enum(['WGS 84', 'GRS 80']).default('WGS 84'),
  }),
  z.strictObject({
    kind: z.literal('typed'),
    gMPerS2: finite,
    /** Half-width of what is believed, m/s2. */
    halfWidthMPerS2: finite.nonnegative(),
  }),
])
export type GravityChoice = z.infer<typeof gravityChoice>

/** What made the forces, beside the weights. */
export const loadingCircumstances = z.strictObject({
  gravity: gravityChoice,
  gMPerS2: positive,
  airDensityKgPerM3: positive,
  /** Force on the cell over weight force; 1: the weights hang on the cell itself. */
  leverRatio: positive,
  /** Half-width of what is believed of the lever ratio, percent of it. */
  leverHalfWidthPercent: finite.nonnegative(),
  capacityN: positive.nullable(),
  preloads: z.int().nonnegative(),
  /** Resolution of the reading, in its own unit; null: not known. */
  resolution: positive.nullable(),
  temperatureStartC: finite.nullable(),
  temperatureEndC: finite.nullable(),
  temperatureNote: kept,
})

/** Gravity, air and lever: what turns a weight into a force. */
export const loadingConditions = z.strictObject({
  gravity: gravityChoice,
  airDensityKgPerM3: finite.default(1.2),
  /** Force on the cell over weight force; 1: the weights hang on the cell itself. */
  leverRatio: finite.default(1),
  leverHalfWidthPercent: finite.default(0),
})
export type LoadingConditionsEntry = z.infer<typeof loadingConditions>
