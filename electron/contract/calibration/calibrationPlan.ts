import * as z from 'zod'
import { finite, note, positive, words } from '../values.ts'
import { loadingConditions } from './loading.ts'
import { weightEntry } from './weight.ts'

/** What is going to be done: which weights, in which steps, how often, and how long each reading is averaged. */
export const calibrationPlan = z.strictObject({
  weights: z.array(weightEntry),
  /** Stacks by the names of their weights, increasing. Zero is not among them: it is read before and after each run. */
  steps: z.array(z.array(words).min(1)).min(1).max(40),
  runs: z.int().min(1).max(10).default(3),
  /** Each run goes down again through the same steps. */
  decreasing: z.boolean().default(false),
  preloads: z.int().min(0).max(10).default(3),
  conditions: loadingConditions,
  /** Null: the capacity that the bench knows. */
  capacityN: positive.nullable().default(null),
  /** Resolution of the reading in its own unit; null: not known. */
  resolution: positive.nullable().default(null),
  temperatureStartC: finite.nullable().default(null),
  temperatureNote: note.default(''),
  /** Readings are averaged over so many seconds once they are steady. */
  averageS: finite.min(0.5).max(60).default(2),
  /** A reading that has not become steady after so many seconds is given up. */
  steadyWithinS: finite.min(2).max(600).default(60),
  /** The highest load of the last run is left on so long, s, and read at 30 s and at the end; null: creep is not measured. */
  creepHoldS: finite.min(60).max(600).nullable().default(null),
})
export type CalibrationPlan = z.infer<typeof calibrationPlan>

/** A plan in newtons. Shares are half-widths of what is believed, over the force. */
export const plannedForces = z.strictObject({
  gMPerS2: positive,
  gravityShare: finite.nonnegative(),
  capacityN: positive.nullable(),
  steps: z.array(
    z.strictObject({
      weights: z.array(z.string()),
      massKg: positive,
      forceN: positive,
      weightsShare: finite.nonnegative(),
      buoyancyShare: finite.nonnegative(),
    }),
  ),
})
export type PlannedForces = z.infer<typeof plannedForces>
