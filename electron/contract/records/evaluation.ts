import * as z from 'zod'
import { detectionSettings } from './detection.ts'
import { finite, forceScale, id, isoInstant } from './force.ts'

export const outcome = z.enum(['break', 'unloading', 'none'])
export type Outcome = z.infer<typeof outcome>

export const curveEventKind = z.enum(['pop-in', 'stick-slip', 'glitch', 'gap', 'clipping', 'seating'])
export const curveEvent = z.strictObject({
  kind: curveEventKind,
  startTimeS: finite,
  endTimeS: finite,
  /** Fall of force, N; null where the kind has none. */
  dropN: finite.nullable(),
  /** The fall as percent of the load it fell from. */
  dropPercent: finite.nullable(),
  cycles: z.int().nullable(),
})
export type CurveEvent = z.infer<typeof curveEvent>

/** What a result must be read with. `clipped` and `over-capacity`: the peak is a lower limit. */
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
])
export type Flag = z.infer<typeof flag>

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
})
export type Evaluation = z.infer<typeof evaluation>
