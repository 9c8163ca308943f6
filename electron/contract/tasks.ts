import * as z from 'zod'
import { finite } from './values.ts'

export const progress = z.strictObject({ task: z.string(), done: finite, total: finite })
export type Progress = z.infer<typeof progress>
