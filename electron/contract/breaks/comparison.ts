import * as z from 'zod'
import { finite, id, positive, samples } from '../values.ts'
import { outcome } from './evaluation.ts'

export const alignment = z.enum(['onset', 'peak', 'break'])
export type Alignment = z.infer<typeof alignment>

/** no: N over s. force: percent of its own peak over s. force-and-time: also time in percent of onset to peak. */
export const normalising = z.enum(['no', 'force', 'force-and-time'])
export type Normalising = z.infer<typeof normalising>

export const comparisonRequest = z.strictObject({
  breakIds: z.array(id).min(1).max(200),
  alignAt: alignment,
  normalising,
})
export type ComparisonRequest = z.infer<typeof comparisonRequest>

/** One curve of a comparison. It is drawn at ((t - originS) / timeUnit, force / forceUnit). */
export const comparedCurve = z.strictObject({
  breakId: id,
  number: z.string().nullable(),
  outcome: outcome.nullable(),
  setAside: z.boolean(),
  peakN: finite.nullable(),
  /** Time of its curve that lies at 0. */
  originS: finite,
  timeUnit: positive,
  forceUnit: positive,
  samples: z.int(),
  /**
   * How far it lies from the median curve while it is loaded: root mean square over the grid, in units of the force axis, and
   * as modified z-score.
   */
  distance: finite.nullable(),
  zScore: finite.nullable(),
  /** Where it lies farthest from the median curve, if it is an outlying one. */
  outlying: z.strictObject({ at: finite, difference: finite }).nullable(),
})
export type ComparedCurve = z.infer<typeof comparedCurve>

/**
 * Several curves beside each other, with their pointwise median and quartiles. A curve takes part in them from its onset to
 * its break (to its peak, where it has no break); it is drawn whole.
 */
export const comparison = z.strictObject({
  curves: z.array(comparedCurve),
  /** Breaks that could not be compared, each with the reason. */
  leftOut: z.array(z.strictObject({ breakId: id, because: z.string() })),
  /** Why no curve can be called an outlying one; null: they were judged. */
  notJudged: z.enum(['too-few', 'all-alike']).nullable().default(null),
  /** What lies at 0 of every curve. */
  alignAt: alignment,
  unit: z.enum(['N', 'counts', '%']),
  timeUnit: z.enum(['s', '%']),
  /** Rises; median, quartiles and count of loaded curves at each. NaN where fewer than three of them, or than half, are loaded. */
  grid: samples,
  median: samples,
  lower: samples,
  upper: samples,
  curvesAt: samples,
})
export type Comparison = z.infer<typeof comparison>
