import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { LoadCourse } from '#contract/breaks/evaluation.ts'
import { loadImpulse, workAtSpeed } from './area.ts'
import type { LoadedCurve } from './loadedCurve.ts'
import { loadingRates } from './loadingRates.ts'
import { toeLine } from './toe.ts'

/**
 * How a loading went, from its onset to peak and break: times, rates, toe, and the area under the load.
 * `seatedS` is the end of its seating, `drivenUntilS` when it first fell or was held, if that was; `peaks` the number of local
 * highs that stand out.
 * Checked: tests/domain/signal/events/course.spec.ts.
 */
export function courseOf(
  curve: LoadedCurve,
  peaks: number,
  seatedS: number | null,
  drivenUntilS: number | null,
  { pressSpeedMmPerS }: Pick<DetectionSettings, 'pressSpeedMmPerS'>,
): LoadCourse {
  const { onsetS, peakS, breakS } = curve
  const impulseNs = loadImpulse(curve, breakS ?? peakS)
  return {
    peaks,
    timeToPeakS: peakS - onsetS,
    timeToFailureS: breakS === null ? null : breakS - onsetS,
    ...loadingRates(curve),
    toe: toeLine(curve, seatedS, drivenUntilS),
    impulseNs,
    pressSpeedMmPerS,
    workJ: pressSpeedMmPerS === null || impulseNs === null ? null : workAtSpeed(impulseNs, pressSpeedMmPerS),
  }
}
