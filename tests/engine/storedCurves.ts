import type { Archive } from '#archive/archive.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { evaluationOf, header, morning, scale, session } from '../archive/storedStudy.ts'

/** Where a made curve rests, climbs and falls; times in ms, one sample each. */
export type MadeCurve = {
  restMs: number
  climbMs: number
  afterMs: number
  peakCounts: number
  /** Added to the readings from one time to another. */
  bulge?: { fromMs: number; toMs: number; counts: number }
}

/** Readings at 1 kHz: at rest, up a straight ramp whose last sample is the peak, at 0 again. */
export function madeReadings({ restMs, climbMs, afterMs, peakCounts, bulge }: MadeCurve): Float64Array<ArrayBuffer> {
  return Float64Array.from({ length: restMs + climbMs + afterMs }, (_, i) => {
    const load = i < restMs || i >= restMs + climbMs ? 0 : (peakCounts * (i + 1 - restMs)) / climbMs
    return load + (bulge !== undefined && i >= bulge.fromMs && i < bulge.toMs ? bulge.counts : 0)
  })
}

/** Keeps a finished break with the result that fits the curve; returns its number. */
export async function keepCurve(
  archive: Archive,
  made: MadeCurve,
  {
    specimenId = null,
    result = {},
    ownScale = scale,
  }: { specimenId?: number | null; result?: Partial<EvaluationResult>; ownScale?: ForceScale } = {},
): Promise<number> {
  const { restMs, climbMs, peakCounts } = made
  const readings = madeReadings(made)
  const curve = { timeUs: Float64Array.from(readings, (_, i) => 1000 * i), readings }
  const { sessionId } = await archive.beginSession(session)
  const { breakId } = await archive.beginBreak({ ...header(sessionId, specimenId), scale: ownScale })
  await archive.appendSamples(breakId, curve)
  const found = {
    onsetTimeS: restMs / 1000,
    peakTimeS: (restMs + climbMs - 1) / 1000,
    // As it is found: the last sample before the fall.
    breakTimeS: (restMs + climbMs - 1) / 1000,
    peakN: ownScale.kind === 'none' ? null : peakCounts * 0.01,
    ...result,
  }
  await archive.finishBreak(breakId, morning, 'complete', 0, { ...evaluationOf(curve, found), scale: ownScale })
  return breakId
}
