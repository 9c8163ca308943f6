import * as z from 'zod'
import { finite, positive } from '../values.ts'

export const uncertaintySource = z.enum([
  'weights',
  'buoyancy',
  'lever',
  'gravity',
  'fit',
  'lack-of-fit',
  'repeatability',
  'resolution',
  'zero',
  'reversibility',
  'creep',
])
export type UncertaintySource = z.infer<typeof uncertaintySource>

/** One line of an uncertainty budget. Degrees of freedom null: infinitely many. */
export const uncertaintyContribution = z.strictObject({
  source: uncertaintySource,
  standardUncertaintyN: finite.nonnegative(),
  distribution: z.enum(['normal', 'rectangular']),
  degreesOfFreedom: positive.nullable(),
})
export type UncertaintyContribution = z.infer<typeof uncertaintyContribution>

/** The budget at one force. expandedN is k = 2; expanded95N takes k from Student's t and the effective degrees of freedom. */
export const uncertaintyAtForce = z.strictObject({
  forceN: positive,
  contributions: z.array(uncertaintyContribution),
  combinedN: finite.nonnegative(),
  effectiveDegreesOfFreedom: positive.nullable(),
  expandedN: finite.nonnegative(),
  expandedPercent: finite.nonnegative(),
  coverageFactor95: positive,
  expanded95N: finite.nonnegative(),
})
export type UncertaintyAtForce = z.infer<typeof uncertaintyAtForce>

/** Everything needed to state the uncertainty at any force of the range again. Relative half-widths are shares of the force. */
export const uncertaintyModel = z.strictObject({
  /** The fit about its centre: force = sum of c_k ((reading - centre) / scale)^power_k, covariance of the c_k. */
  centred: z.strictObject({
    centre: finite,
    scale: positive,
    powers: z.array(z.int().nonnegative()),
    coefficients: z.array(finite),
    covariance: z.array(z.array(finite)),
    degreesOfFreedom: z.int().positive(),
  }),
  readingRange: z.tuple([finite, finite]),
  forceRangeN: z.tuple([finite, finite]),
  repeatabilityN: finite.nonnegative(),
  repeatabilityDegreesOfFreedom: z.int().positive(),
  lackOfFitHalfWidthN: finite.nonnegative().nullable(),
  weightsShare: finite.nonnegative().nullable(),
  buoyancyShare: finite.nonnegative().nullable(),
  leverShare: finite.nonnegative().nullable(),
  gravityShare: finite.nonnegative().nullable(),
  resolution: finite.nonnegative().nullable(),
  zeroHalfWidthN: finite.nonnegative().nullable(),
  reversibilityShare: finite.nonnegative().nullable(),
  creepShare: finite.nonnegative().nullable(),
})
export type UncertaintyModel = z.infer<typeof uncertaintyModel>

export const uncertaintyBudget = z.strictObject({
  model: uncertaintyModel,
  steps: z.array(uncertaintyAtForce),
  worstPercent: finite.nonnegative(),
  worstAtN: positive,
})
export type UncertaintyBudget = z.infer<typeof uncertaintyBudget>
