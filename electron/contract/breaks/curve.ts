import * as z from 'zod'
import { samples } from '../values.ts'

/** Raw samples: seconds since the capture's first sample rise strictly; readings in the header's unit, before scale and tare. */
export const rawCurve = z.strictObject({ timeS: samples, readings: samples })
export type RawCurve = z.infer<typeof rawCurve>

/** A curve to draw: force in N after tare (readings where there is no scale), thinned by minimum and maximum if asked. */
export const forceCurve = z.strictObject({
  timeS: samples,
  force: samples,
  unit: z.enum(['N', 'counts']),
  samples: z.int(),
})
export type ForceCurve = z.infer<typeof forceCurve>

/** Raw samples on their way to the archive: whole microseconds since the capture's first sample, rising strictly; readings as received. */
export const sampleBlock = z.strictObject({ timeUs: samples, readings: samples })
export type SampleBlock = z.infer<typeof sampleBlock>
