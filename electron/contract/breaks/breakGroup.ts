import * as z from 'zod'
import { specimenFields } from '../specimens/specimen.ts'

/** What the breaks of a group agree in. */
export const groupTraits = z.strictObject({
  ...specimenFields.pick({ adhesive: true, jointType: true, bondLineGapMm: true, exposure: true }).shape,
  /** null: the day of glue-up is not known of any of them. */
  ageMonths: z.int().nullable(),
})
export type GroupTraits = z.infer<typeof groupTraits>
