import * as z from 'zod'
import { positive } from '../values.ts'

/**
 * A filter for looking at a curve, never for its peak.
 * cfc: channel frequency class of SAE J211-1 / ISO 6487, run forward and backward. butterworth: the same filter with its
 * two-pass -3 dB point at a frequency of one's own. moving-average: mean over a window about each sample.
 */
export const curveFilter = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('cfc'), frequencyClass: z.union([60, 180, 600, 1000].map((n) => z.literal(n))) }),
  z.strictObject({ kind: z.literal('butterworth'), cutoffHz: positive }),
  z.strictObject({ kind: z.literal('moving-average'), windowS: positive }),
])
export type CurveFilter = z.infer<typeof curveFilter>
