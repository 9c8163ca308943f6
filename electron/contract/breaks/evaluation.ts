import * as z from 'zod'
import { forceScale } from '../calibration/forceScale.ts'
import { finite, id, isoInstant } from '../values.ts'
import { detectionSettings } from './detection.ts'

export const outcome = z.enum(['break', 'unloading', 'none'])
export type Outcome = z.infer<typeof outcome>

export const curveEventKind = z.enum([
  'pop-in',
  'stick-slip',
  'glitch',
  'gap',
  'clipping',
  'seating',
  'plateau',
  'hold',
  'reload',
  'final-drop',
])

/** Something that happened on a curve. What a kind does not have, or an older method did not look for, is null. */
export const curveEvent = z.strictObject({
  kind: curveEventKind,
  startTimeS: finite,
  endTimeS: finite,
  /** Fall of force, N; null where the kind has none. */
  dropN: finite.nullable(),
  /** The fall as percent of the load it fell from. */
  dropPercent: finite.nullable(),
  cycles: z.int().nullable(),
  /** The load that it fell from, or stood at, N after tare; stick-slip: before the first drop. */
  fromN: finite.nullable().default(null),
  /** That load as percent of the peak, both above the level at rest. */
  percentOfPeak: finite.nullable().default(null),
  /** stick-slip: mean and smallest of its drops, N (dropN is the largest), and the mean time from one slip to the next, s. */
  meanDropN: finite.nullable().default(null),
  leastDropN: finite.nullable().default(null),
  periodS: finite.nullable().default(null),
  /** final-drop: all at once, or in steps or slowly; null where the samples are too far apart to tell. */
  manner: z.enum(['brittle', 'progressive']).nullable().default(null),
})
export type CurveEvent = z.infer<typeof curveEvent>

/**
 * What a result must be read with. `clipped` and `over-capacity`: the peak is a lower limit. `peak-picked` and
 * `premature-failure`: a person's word stands in place of the peak found; an evaluation never carries them, summaries do,
 * and only those others that hold for the load that counts.
 */
export const flag = z.enum([
  'uncalibrated',
  'no-scale',
  'clipped',
  'over-capacity',
  'gap',
  'gap-at-peak',
  'glitch',
  'sampling-too-slow',
  'no-pre-trigger',
  'interrupted',
  'recovered',
  'above-verified-range',
  'below-verified-range',
  'peak-picked',
  'premature-failure',
])
export type Flag = z.infer<typeof flag>

/** A stretch of the loading and the slope of the load in it; N/s. */
export const loadRate = z.strictObject({ fromS: finite, toS: finite, rateNPerS: finite })
export type LoadRate = z.infer<typeof loadRate>

/** How a curve went from onset to peak and break. What cannot be had is null; without a scale nothing in newtons can. */
export const loadCourse = z.strictObject({
  /** Peaks up to the break that stand out of the noise, the peak among them. */
  peaks: z.int().nonnegative(),
  /** From onset to the peak, s. */
  timeToPeakS: finite.nullable(),
  /** From onset to the break, s; null for an unloading. */
  timeToFailureS: finite.nullable(),
  /** Slope of the straight line from where the load first reaches 10 % of the peak to where it first reaches 90 %. */
  meanRateNPerS: finite.nullable(),
  /** Slopes along the way, onset to peak, in stretches of equal time. */
  rates: z.array(loadRate),
  /** SD of those between 10 % and 90 % of the peak, in percent of their mean. */
  rateSpreadPercent: finite.nonnegative().nullable(),
  /**
   * Toe compensation offered: where the straight line through the straight part meets the level at rest. Never applied to
   * the peak.
   */
  toe: z.strictObject({ zeroTimeS: finite, slopeNPerS: finite }).nullable(),
  /** Area under load and time, onset to break (to the peak, for an unloading), N s. */
  impulseNs: finite.nullable(),
  /** Speed of the press that was taken as constant, mm/s; null: none was given. */
  pressSpeedMmPerS: finite.nullable(),
  /** Area under load and displacement, J: at that speed, or by a displacement that was measured along. */
  workJ: finite.nullable(),
})
export type LoadCourse = z.infer<typeof loadCourse>

/**
 * What one curve says. Times in seconds of the curve, forces in newtons after tare, null where it cannot be had.
 * peakN: highest unfiltered sample of the load curve. samplingBoundN: how far the true peak can lie above it
 * (rate just before the peak x (sample interval + settling time)).
 */
export const evaluationResult = z.strictObject({
  outcome,
  peakN: finite.nullable(),
  peakTimeS: finite.nullable(),
  onsetTimeS: finite.nullable(),
  breakTimeS: finite.nullable(),
  sampleRateHz: finite.nullable(),
  samples: z.int().nonnegative(),
  missingSamples: z.int().nonnegative(),
  noiseN: finite.nullable(),
  loadingRateNPerS: finite.nullable(),
  samplingBoundN: finite.nullable(),
  samplingBoundPercent: finite.nullable(),
  afterBreakN: finite.nullable(),
  flags: z.array(flag),
  events: z.array(curveEvent),
  /** null: nothing was loaded, or an older method made the result. */
  course: loadCourse.nullable().default(null),
})
export type EvaluationResult = z.infer<typeof evaluationResult>

/** A derived result beside its curve, with everything needed to derive it again. Never changed; a newer one stands beside it. */
export const evaluation = z.strictObject({
  evaluationId: id,
  breakId: id,
  madeAt: isoInstant,
  method: z.string(),
  settings: detectionSettings,
  scale: forceScale,
  tareOffset: finite,
  result: evaluationResult,
  /** The re-evaluation that laid it beside the others, in force only while that is adopted; null: in force since it was made. */
  reevaluationId: id.nullable().default(null),
  /** What was in force when a re-evaluation made it. */
  besideId: id.nullable().default(null),
})
export type Evaluation = z.infer<typeof evaluation>
/** An evaluation before the archive has numbered it; what it does not have may be left out. */
export type NewEvaluation = Omit<z.input<typeof evaluation>, 'evaluationId'>
