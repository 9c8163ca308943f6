import * as z from 'zod'
import { troubleMessage } from '../errors.ts'
import { finite, id, isoInstant, kept, positive } from '../values.ts'
import { liveReading } from './calibrationRoutine.ts'

/** A reading of the check weight against what it should be. */
export const checkWeightReading = z.strictObject({
  checkId: id,
  calibrationId: id,
  takenAt: isoInstant,
  by: kept,
  weight: z.string(),
  expectedN: positive,
  indicatedN: finite,
  sdN: finite.nonnegative(),
  count: z.int().positive(),
})
export type CheckWeightReading = z.infer<typeof checkWeightReading>

/**
 * What the newest check says. finding: by what it was judged. Deviation and what is allowed of it, N; the allowance is that
 * before there is a chart.
 */
export const checkVerdict = z.strictObject({
  standing: z.enum(['too-few', 'in-control', 'watch', 'outside']),
  finding: z.enum(['beyond-uncertainty', 'within-uncertainty', 'beyond-limits', 'drift', 'one-sided', 'as-it-should']),
  deviationN: finite,
  allowedN: finite,
  /** Checks that are still wanting for a control chart. */
  checksMissing: z.int().nonnegative(),
  lowerN: finite.nullable(),
  upperN: finite.nullable(),
})
export type CheckVerdict = z.infer<typeof checkVerdict>

/** Checks of one weight under one calibration, oldest first, with the charts of their deviations (indicated minus expected), N. */
export const checkHistory = z.strictObject({
  calibrationId: id,
  weight: z.string(),
  checks: z.array(z.strictObject({ ...checkWeightReading.shape, deviationN: finite })),
  verdict: checkVerdict,
  /** Limits from the first eight; null before there are two. movingRanges has one less than checks. */
  individuals: z
    .strictObject({
      centre: finite,
      lower: finite,
      upper: finite,
      movingRanges: z.array(finite),
      meanMovingRange: finite,
      movingRangeUpper: finite,
    })
    .nullable(),
  /** Weighted average of the checks after the first eight; null before there are nine. */
  ewma: z.strictObject({ smoothed: z.array(finite), lower: finite, upper: finite }).nullable(),
})
export type CheckHistory = z.infer<typeof checkHistory>

/** zero: take all off, then go on. load: hang the check weight, then go on. done: the check is stored. */
export const checkState = z.strictObject({
  phase: z.enum(['idle', 'zero', 'load', 'waiting-for-steady', 'averaging', 'done']),
  weights: z.array(z.string()),
  expectedN: positive.nullable(),
  live: liveReading,
  problem: troubleMessage.nullable(),
  /** The check just stored, and the word on it. */
  result: z.strictObject({ check: checkWeightReading, verdict: checkVerdict }).nullable(),
})
export type CheckState = z.infer<typeof checkState>
