import * as z from 'zod'
import { finite } from '../values.ts'

const count = z.int().nonnegative()

/** A code alone: there is no figure to it. */
const plainNote = z.strictObject({
  code: z.enum([
    'no-degrees-of-freedom',
    'lack-of-fit',
    'no-range',
    'not-repeated',
    'no-decreasing',
    'no-zero-return',
    'no-hold',
    'no-resolution',
  ]),
})

/** What limits the word of a calibration: what was found, with its figures. The sentence for it is no part of the record. */
export const calibrationNote = z.discriminatedUnion('code', [
  plainNote,
  z.strictObject({ code: z.literal('degree-chosen'), degree: count }),
  /** The reading without load of a curve that is held at zero, in the unit of the device. */
  z.strictObject({ code: z.literal('zero-reading'), reading: finite }),
  z.strictObject({ code: z.literal('steps-below-range'), steps: count }),
  /** The highest known force in percent of the capacity. */
  z.strictObject({ code: z.literal('far-below-capacity'), percent: finite }),
  z.strictObject({ code: z.literal('few-runs'), runs: count }),
  z.strictObject({ code: z.literal('few-steps'), steps: count }),
  z.strictObject({ code: z.literal('left-out'), shares: z.array(z.enum(['weights', 'gravity'])) }),
])
export type CalibrationNote = z.infer<typeof calibrationNote>

/** Why a degree is proposed; the tests of the degrees stand beside it. */
export const degreeReason = z.discriminatedUnion('code', [
  z.strictObject({
    code: z.enum(['exact', 'too-few-steps', 'too-few-loads', 'lower-fit-worse', 'lack-not-significant', 'all-lack']),
  }),
  /** The next coefficient may be there by chance, with this probability. */
  z.strictObject({ code: z.literal('next-not-significant'), pValue: finite.min(0).max(1) }),
])
export type DegreeReason = z.infer<typeof degreeReason>
