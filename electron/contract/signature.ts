import * as z from 'zod'
import { reason, words } from './values.ts'

/** Who made a correction and why. */
export const signature = z.strictObject({ by: words.min(1), reason: reason.min(1) })
export type Signature = z.infer<typeof signature>
