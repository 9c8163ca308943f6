import * as z from 'zod'
import { words } from './values.ts'

/** Who made a correction and why. */
export const signature = z.strictObject({ by: words.min(1), reason: z.string().trim().min(1).max(1000) })
export type Signature = z.infer<typeof signature>
