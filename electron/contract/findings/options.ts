import * as z from 'zod'
import { finite, positive } from '../values.ts'
import { findingKind } from './lines.ts'

/** Nearer to 0 than this no interval has a width that arithmetic can tell. */
export const leastShare = 1e-6
const share = finite.min(leastShare).lt(1)
/** Beyond this, strengths leave the numbers that squares can be made of. */
export const largestFactor = 1e6

export const woodFailureTreatment = z.enum(['observed', 'bond-only', 'censored', 'adjusted'])
export const fittedDistribution = z.enum(['weibull', 'lognormal', 'normal'])

/** How findings are made. Every value has a default, the usual one of timber practice where there is one. */
export const findingsOptions = z.strictObject({
  woodFailure: woodFailureTreatment.default('observed'),
  /** A block with at least so much torn wood is a wood failure. */
  limitPercent: finite.gt(0).max(100).default(75),
  /** adjusted: strength x (1 + factor x wood failure / 100). */
  adjustFactor: finite.min(-largestFactor).max(largestFactor).default(1),
  confidence: share.default(0.95),
  /** Of the censored fit; null: all three. */
  distribution: fittedDistribution.nullable().default(null),
  toleranceConfidence: share.default(0.75),
  toleranceContent: share.default(0.95),
  /** The group that the others are compared with. */
  reference: z.string().nullable().default(null),
  /** Margin of equivalence, of the mean of b; null: none is tested. */
  marginPercent: positive.nullable().default(null),
  /** null: all. */
  only: z.array(findingKind).nullable().default(null),
  seed: z.int().min(0).default(1),
})
export type FindingsOptions = z.infer<typeof findingsOptions>
