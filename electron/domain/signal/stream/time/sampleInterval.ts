/** The usual time between two samples, and the samples that are missing where a step is longer. */
export type SampleInterval = {
  /** Learns from the times of the first samples; before it nothing is counted. */
  learn(timesS: Float64Array, count: number): void
  /** Takes times up to one before which samples are missing; returns the index after the newest one taken. */
  take(timesS: Float64Array, from: number, to: number): number
  /** How many samples are missing before the newest time. */
  missingBefore(): number
  /** Takes a single time; returns how many samples are missing before it. */
  push(timeS: number): number
  /** The newest time; NaN before the first. */
  lastS(): number
  /** Usual interval, s; NaN while nothing is known. */
  usualS(): number
  /** Mean of all intervals that hide no gap, s; NaN while there are none. */
  meanS(): number
  missing(): number
}

/** A step longer than so many usual intervals hides missing samples. */
const gapRatio = 1.75
/** Steps within these ratios of the usual interval teach it. */
const usualLow = 0.4
const usualHigh = 1.6
const learning = 1 / 64
/** After so many unusual steps of one length in a row the device has changed its rate. */
const relearnSteps = 9
const relearnSpread = 1.5

/**
 * Follows the usual interval of a stream of rising times and counts missing samples.
 *
 *   missing = round(step / usual) − 1   where step > 1.75 usual
 *   usual   median of the first steps, then followed slowly (1/64 of the difference with each usual step)
 *
 * Needs times alone, so that a stored curve tells its gaps as the live stream did.
 * Checked: tests/domain/signal/stream/sampleInterval.spec.ts.
 */
export function createSampleInterval(): SampleInterval {
  const state = { lastS: Number.NaN, usualS: Number.NaN, sumS: 0, count: 0, missing: 0, missingBefore: 0, unusual: 0 }
  const single = new Float64Array(1)
  const unusualS = new Float64Array(relearnSteps)

  function learn(timesS: Float64Array, count: number): void {
    const steps = timesS.subarray(1, count).map((timeS, i) => timeS - timesS[i]!)
    steps.sort()
    // The lower median: with gaps about, the usual step is the shorter one. There is none of a single sample.
    const median = steps[(steps.length - 1) >> 1]!
    if (median > 0) state.usualS = median
  }

  function take(timesS: Float64Array, from: number, to: number): number {
    let { lastS, usualS, sumS, count } = state
    let missing = 0
    let i = from
    for (; i < to && missing === 0; i++) {
      const timeS = timesS[i]!
      const step = timeS - lastS
      lastS = timeS
      if (!(step > 0 && usualS > 0)) continue
      if (step <= gapRatio * usualS) {
        sumS += step
        count += 1
      } else missing = Math.round(step / usualS) - 1
      if (step >= usualLow * usualS && step <= usualHigh * usualS) {
        usualS += (step - usualS) * learning
        state.unusual = 0
      } else usualS = afterUnusual(step, usualS)
    }
    state.lastS = lastS
    state.usualS = usualS
    state.sumS = sumS
    state.count = count
    state.missing += missing
    state.missingBefore = missing
    return i
  }

  /** The usual interval after a step that is unusual. */
  function afterUnusual(step: number, usualS: number): number {
    unusualS[state.unusual] = step
    state.unusual += 1
    if (state.unusual < relearnSteps) return usualS
    state.unusual = 0
    const sorted = unusualS.slice().sort()
    return sorted[relearnSteps - 1]! <= relearnSpread * sorted[0]! ? sorted[relearnSteps >> 1]! : usualS
  }

  return {
    learn,
    take,
    missingBefore: () => state.missingBefore,
    push(timeS) {
      single[0] = timeS
      take(single, 0, 1)
      return state.missingBefore
    },
    lastS: () => state.lastS,
    usualS: () => state.usualS,
    meanS: () => (state.count > 0 ? state.sumS / state.count : state.usualS),
    missing: () => state.missing,
  }
}
