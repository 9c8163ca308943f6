import * as z from 'zod'
import { id, isoInstant } from '../values.ts'

/** Lines of a session that were no reading. */
export const rejectedLines = z.strictObject({
  rejectedLineId: id,
  sessionId: id,
  recordedAt: isoInstant,
  count: z.int().positive(),
  /** The bytes of one of them in hexadecimal; null: so many were kept before that this one was not. */
  example: z
    .string()
    .regex(/^([0-9a-f]{2})*$/)
    .nullable(),
})
export type RejectedLines = z.infer<typeof rejectedLines>
