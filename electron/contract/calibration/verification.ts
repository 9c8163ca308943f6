import * as z from 'zod'
import { finite, id } from '../values.ts'

/** The force of a result against the calibration that it was found with. */
export const verification = z.strictObject({
  calibrationId: id,
  name: z.string(),
  verifiedRangeN: z.tuple([finite, finite]).nullable(),
  /** The force over the highest force applied in the calibration; above 1 it lies beyond all that is known. */
  timesVerified: finite.nullable(),
  /** Expanded uncertainty (k = 2) at the force; null outside the verified range, or where the calibration cannot say. */
  expandedUncertaintyN: finite.nonnegative().nullable(),
  expandedUncertaintyPercent: finite.nonnegative().nullable(),
})
export type Verification = z.infer<typeof verification>
