import * as z from 'zod'
import { finite, positive } from '../values.ts'

/** `pair`: two groups, t test; `any`: all groups, one-way F test, the difference being that of the two outermost. */
export const plannedComparison = z.enum(['pair', 'any'])
export type PlannedComparison = z.infer<typeof plannedComparison>

const probability = finite.gt(0).lt(1)

/** Two of blocks a group, difference and power; the third, null, is asked for. */
export const sampleSizeQuestion = z.strictObject({
  comparison: plannedComparison,
  groups: z.int().min(2).max(10_000),
  /** Coefficient of variation within a group, percent. */
  cvPercent: positive,
  confidence: probability,
  /** Blocks a group. */
  n: finite.min(2).nullable(),
  /** Of the mean. */
  differencePercent: positive.nullable(),
  power: probability.nullable(),
})
export type SampleSizeQuestion = z.infer<typeof sampleSizeQuestion>

/** The three together; `n` unrounded. */
export type SampleSizePlan = {
  comparison: PlannedComparison
  groups: number
  n: number
  cvPercent: number
  differencePercent: number
  power: number
  confidence: number
}
