import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { LoadWatch } from '../rest/loadWatch.ts'
import type { SampleHistory } from '../stream/sampleHistory.ts'
import { type CurveEvaluator, createCurveEvaluator } from './curveEvaluator.ts'

/** A capture that has begun. */
export type CaptureStart = {
  /** So many of the newest samples taken, the newest included, belong to the capture already. */
  samples: number
  /** Stream time of the capture's first sample, s: zero of the times in its result. */
  firstTimeS: number
  /** The settings to record: with the start threshold in force. */
  settings: DetectionSettings
}

/** Onset is looked for so far back from the moment when loading was noticed, s: a slow toe stays below the threshold. */
const longestToeS = 10
/** A capture begins with so many samples at rest at least, where there are. */
export const leastPreTriggerSamples = 24
const microseconds = 1e6

/** Most samples that a capture may begin with: what a session must keep to be able to store them. */
export const longestPreTriggerS = (settings: Pick<DetectionSettings, 'preTriggerS'>): number =>
  settings.preTriggerS + longestToeS

/** Times since a capture's first sample, in whole microseconds; written to `relativeS` at the same indices. */
export function sinceOrigin(
  originS: number,
  timeS: Float64Array,
  from: number,
  to: number,
  relativeS: Float64Array,
): void {
  for (let i = from; i < to; i++) relativeS[i] = Math.round((timeS[i]! - originS) * microseconds) / microseconds
}

/**
 * Begins the capture of a loading that the watch has noticed at the newest sample of the history: `preTriggerS` before its
 * onset, 24 samples at least. The evaluator has taken all samples of the capture so far.
 * Checked: tests/domain/signal/loading/captureStart.spec.ts.
 */
export function startCapture(
  history: SampleHistory,
  watch: LoadWatch,
  settings: DetectionSettings,
): { start: CaptureStart; evaluator: CurveEvaluator } {
  const threshold = watch.threshold()
  const recorded: DetectionSettings = threshold > 0 ? { ...settings, startThresholdN: threshold } : settings
  const onset = history.firstAtOrAfter(watch.onsetS())
  const preTrigger = history.firstAtOrAfter(watch.onsetS() - settings.preTriggerS)
  const [timeS, force, reading] = history.copyFrom(Math.max(0, Math.min(preTrigger, onset - leastPreTriggerSamples)))
  const count = timeS!.length
  const relativeS = new Float64Array(count)
  for (let first = 0; ; ) {
    const evaluator = createCurveEvaluator(recorded)
    const firstTimeS = timeS![first]!
    sinceOrigin(firstTimeS, timeS!, first, count, relativeS)
    const next = evaluator.take(relativeS, force!, reading!, first, count)
    if (!evaluator.over() || next === count)
      return { start: { samples: count - first, firstTimeS, settings: recorded }, evaluator }
    // Something before the loading looked like one and ended: the capture begins after it.
    first = next
  }
}
