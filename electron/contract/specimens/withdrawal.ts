import * as z from 'zod'
import { id, isoInstant, kept } from '../values.ts'

/** A specimen that is lost, spoiled or given away leaves the study, or comes back; the newest stands. */
export const withdrawal = z.strictObject({
  withdrawalId: id,
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  specimenId: id,
  kind: z.enum(['withdrawn', 'taken-back']),
})
export type Withdrawal = z.infer<typeof withdrawal>
