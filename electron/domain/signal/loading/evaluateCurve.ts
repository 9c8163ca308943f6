import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult, LoadCourse } from '#contract/breaks/evaluation.ts'
import { createCurveEvaluator } from './curveEvaluator.ts'

/** Names the rules that made a result; the number grows whenever any of them changes. */
export const detectionMethod = 'break-detection 4'

/** Times are taken as whole nanoseconds from the first sample, so that where a curve lies in time changes nothing. */
const perSecond = 1e9
const blockLength = 4096

/**
 * Evaluates a whole curve: times in s that rise strictly, force after tare (readings where there is no scale), and the
 * readings for the end codes (null: not known). Runs the machine of the live detector over the samples, so that a
 * stored capture with its recorded start threshold gives the live result.
 * Where a curve holds several loadings, the first break stands, else the unloading with the highest peak; samples and
 * missing samples are those of the whole curve.
 *
 * Throws RangeError for arrays of unequal length, for values that are not finite and for times that do not rise.
 * Checked: tests/domain/signal/loading/evaluateCurve.spec.ts, tests/reference/liveAndStored.spec.ts.
 */
export function evaluateCurve(
  timeS: Float64Array,
  force: Float64Array,
  readings: Float64Array | null,
  settings: DetectionSettings,
): EvaluationResult {
  const count = timeS.length
  if (force.length !== count || (readings !== null && readings.length !== count))
    throw new RangeError('evaluateCurve requires arrays of one length')
  for (let i = 0; i < count; i++) {
    if (!Number.isFinite(timeS[i]!) || !Number.isFinite(force[i]!))
      throw new RangeError(`evaluateCurve requires finite numbers (sample ${i + 1})`)
    if (i > 0 && !(timeS[i]! > timeS[i - 1]!))
      throw new RangeError(`evaluateCurve requires times that rise (sample ${i + 1})`)
  }
  const used = readings === null ? { ...settings, endCodes: null } : settings
  const relativeS = new Float64Array(count)
  let best: EvaluationResult | null = null
  let missingSamples = 0
  let from = 0
  do {
    const originS = timeS[from]!
    const evaluator = createCurveEvaluator(used)
    let at = from
    while (at < count && !evaluator.over()) {
      const end = Math.min(count, at + blockLength)
      for (let i = at; i < end; i++) relativeS[i] = Math.round((timeS[i]! - originS) * perSecond) / perSecond
      at = evaluator.take(relativeS, force, readings ?? force, at, end)
    }
    evaluator.finish()
    const result = shifted(evaluator.result(), originS)
    missingSamples += result.missingSamples
    if (best === null || standsBefore(result, best)) best = result
    from = at
  } while (from < count)
  return { ...best, samples: count, missingSamples }
}

function standsBefore(result: EvaluationResult, other: EvaluationResult): boolean {
  if (other.outcome === 'break') return false
  if (result.outcome === 'break' || other.outcome === 'none') return result.outcome !== 'none'
  return (result.peakN ?? Number.NEGATIVE_INFINITY) > (other.peakN ?? Number.NEGATIVE_INFINITY)
}

function shifted(result: EvaluationResult, byS: number): EvaluationResult {
  const later = (timeS: number | null) => (timeS === null ? null : timeS + byS)
  const { course } = result
  return {
    ...result,
    peakTimeS: later(result.peakTimeS),
    onsetTimeS: later(result.onsetTimeS),
    breakTimeS: later(result.breakTimeS),
    events: result.events.map((event) => ({
      ...event,
      startTimeS: event.startTimeS + byS,
      endTimeS: event.endTimeS + byS,
    })),
    course: course === null ? null : shiftedCourse(course, byS),
  }
}

const shiftedCourse = (course: LoadCourse, byS: number): LoadCourse => ({
  ...course,
  rates: course.rates.map(({ fromS, toS, rateNPerS }) => ({ fromS: fromS + byS, toS: toS + byS, rateNPerS })),
  toe: course.toe === null ? null : { ...course.toe, zeroTimeS: course.toe.zeroTimeS + byS },
})
