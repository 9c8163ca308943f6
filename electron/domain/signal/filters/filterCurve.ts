import type { CurveFilter } from '#contract/breaks/curveFilter.ts'
import { type Stretch, stretchesBetweenGaps } from '../stream/stretches.ts'
import type { Curve } from '../stream/thinning.ts'
import { butterworth } from './butterworth.ts'
import { channelFrequencyClass, halfPowerOfClassHz } from './channelFrequencyClass.ts'
import { filterRefusal } from './filterRefusal.ts'
import { movingAverage } from './movingAverage.ts'
import { filterTwoPass, type LowPass } from './twoPass.ts'

/** After so many periods of the cutoff nothing is left of how a pass began (1.6e-5 of it). */
const paddingPeriods = 2

/**
 * The forces of a curve as a filter shows them, sample for sample. Never for the peak: each of the filters falsifies the
 * peak of a ramp and drop.
 *
 * Each stretch between gaps is filtered on its own, at the mean interval of its samples; a stretch of one sample stands as
 * it is. The low-passes take the samples of a stretch for evenly spaced, which they are nearly: see filterRefusal for what
 * is refused. The moving average goes by time.
 *
 * Throws RangeError where filterRefusal refuses. Checked: tests/domain/signal/filters/filterCurve.spec.ts against scipy.
 */
export function filterCurve(
  curve: Curve,
  filter: CurveFilter,
  stretches: readonly Stretch[] = stretchesBetweenGaps(curve.timeS),
): Float64Array {
  const refusal = filterRefusal(filter, stretches)
  if (refusal !== null) throw new RangeError(`filterCurve: ${refusal.because}`)
  if (filter.kind === 'moving-average') return movingAverage(curve, filter.windowS, stretches)
  const filtered = new Float64Array(curve.force.length)
  for (const { from, to, intervalS } of stretches) {
    const values = curve.force.subarray(from, to)
    filtered.set(to - from < 2 ? values : filterEven(values, filter, intervalS), from)
  }
  return filtered
}

type LowPassFilter = Exclude<CurveFilter, { kind: 'moving-average' }>

function filterEven(values: Float64Array, filter: LowPassFilter, intervalS: number): Float64Array {
  const { lowPass, cutoffHz } = lowPassOf(filter, intervalS)
  return filterTwoPass(values, lowPass, Math.ceil(paddingPeriods / (cutoffHz * intervalS)))
}

function lowPassOf(filter: LowPassFilter, intervalS: number): { lowPass: LowPass; cutoffHz: number } {
  if (filter.kind === 'cfc') {
    const { frequencyClass } = filter
    return {
      lowPass: channelFrequencyClass(frequencyClass, intervalS),
      cutoffHz: halfPowerOfClassHz(frequencyClass),
    }
  }
  return { lowPass: butterworth(filter.cutoffHz, intervalS), cutoffHz: filter.cutoffHz }
}
