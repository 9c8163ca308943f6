import * as z from 'zod'
import { finite, id, isoInstant } from '../values.ts'

/** What one reading of the device is expressed in. `counts`: raw converter codes, nothing is known of their force. */
export const readingUnit = z.enum(['counts', 'N', 'kN', 'lbf', 'kgf', 'kg', 'g'])
export type ReadingUnit = z.infer<typeof readingUnit>

/**
 * How readings become newtons, before tare.
 * none: they do not (force is then null everywhere). uncalibrated-scale: a typed factor.
 * device-unit: the device claims a unit; its claim is not checked and counts as uncalibrated.
 * calibration: F = b0 + b1 r + b2 r^2 + ... in newtons, r the reading.
 */
export const forceScale = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  z.strictObject({ kind: z.literal('uncalibrated-scale'), nPerCount: finite.refine((n) => n !== 0, 'must not be 0') }),
  z.strictObject({ kind: z.literal('device-unit'), unit: readingUnit.exclude(['counts']) }),
  z.strictObject({ kind: z.literal('calibration'), calibrationId: id, coefficients: z.array(finite).min(2) }),
])
export type ForceScale = z.infer<typeof forceScale>

/** The zero offset taken just before loading, in newtons of the scale in force (in counts when the scale is none). */
export const tare = z.strictObject({
  offset: finite,
  sd: finite.nonnegative(),
  readings: z.int().positive(),
  takenAt: isoInstant,
})
export type Tare = z.infer<typeof tare>
