import * as z from 'zod'
import { id, isoInstant, kept, percent } from '../values.ts'

/** EN ISO 10365 designations; the letters are common practice, no source read. */
export const failurePattern = z.enum(['SF', 'CSF', 'DF', 'CF', 'SCF', 'AF', 'ACFP'])
export type FailurePattern = z.infer<typeof failurePattern>

/** What the broken faces look like. A newer assessment stands in force before an older one; none is removed. */
export const assessment = z.strictObject({
  assessmentId: id,
  breakId: id,
  recordedAt: isoInstant,
  by: kept,
  /** Percent of the bonded area that failed in the wood, nearest 5 %; null: not assessed. */
  woodFailurePercent: percent.multipleOf(5).nullable(),
  failurePattern: failurePattern.nullable(),
  note: kept,
})
export type Assessment = z.infer<typeof assessment>
