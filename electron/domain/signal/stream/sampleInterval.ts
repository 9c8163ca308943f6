/** The usual time between two samples, and the samples that are missing where a step is longer. */
export type SampleInterval = {
  /** Learns from the times of the first samples; before it `push` counts nothing. */
  learn(timesS: Float64Array, count: number): void
  /** Takes the next time; returns how many samples are missing before it. */
  push(timeS: number): number
  /** Takes times as long as their steps are usual; returns the index of the first that is not. */
  take(timesS: Float64Array, from: number, to: number): number
  /** As many steps as counted passed, all of them usual: the last time, the sum of the steps and the usual step after them. */
  passed(lastS: number, usualS: number, sumS: number, count: number): void
  /** Usual interval, s; NaN while nothing is known. */
  usualS(): number
  /** Mean of all intervals that hide no gap, s; NaN while there are none. */
  meanS(): number
  missing(): number
}

/** A step longer than so many usual intervals hides missing samples. */
const gapRatio = 1.75
/** Steps within these ratios of the usual interval teach it. */
export const usualLow = 0.4
export const usualHigh = 1.6
export const learning = 1 / 64
/** After so many unusual steps of one length in a row the device has changed its rate. */
const relearnSteps = 9
const relearnSpread = 1.5

type State = ReturnType<typeof nothingKnown>
const nothingKnown = () => ({ lastS: Number.NaN, usualS: Number.NaN, sumS: 0, count: 0, missing: 0, unusual: 0 })

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
  const state = nothingKnown()
  const unusualS = new Float64Array(relearnSteps)

  function learn(timesS: Float64Array, count: number): void {
    if (count < 2) return
    const steps = new Float64Array(count - 1)
    for (let i = 1; i < count; i++) steps[i - 1] = timesS[i]! - timesS[i - 1]!
    steps.sort()
    // The lower median: with gaps about, the usual step is the shorter one.
    const median = steps[(steps.length - 1) >> 1]!
    if (median > 0) state.usualS = median
  }

  function push(timeS: number): number {
    const step = timeS - state.lastS
    const usual = state.usualS
    state.lastS = timeS
    if (!(step > 0 && usual > 0)) return 0
    if (step >= usualLow * usual && step <= usualHigh * usual) {
      state.usualS = usual + (step - usual) * learning
      state.unusual = 0
    } else noteUnusual(step)
    if (step <= gapRatio * usual) {
      state.sumS += step
      state.count += 1
      return 0
    }
    const missing = Math.round(step / usual) - 1
    state.missing += missing
    return missing
  }

  function noteUnusual(step: number): void {
    unusualS[state.unusual] = step
    state.unusual += 1
    if (state.unusual < relearnSteps) return
    state.unusual = 0
    const sorted = unusualS.slice().sort()
    if (sorted[relearnSteps - 1]! <= relearnSpread * sorted[0]!) state.usualS = sorted[relearnSteps >> 1]!
  }

  return {
    learn,
    push,
    take: (timesS, from, to) => takeUsual(state, timesS, from, to),
    passed(lastS, usualS, sumS, count) {
      state.lastS = lastS
      state.usualS = usualS
      state.sumS += sumS
      state.count += count
      state.unusual = 0
    },
    usualS: () => state.usualS,
    meanS: () => (state.count > 0 ? state.sumS / state.count : state.usualS),
    missing: () => state.missing,
  }
}

/** Outside the closure, so that the compiler keeps one loop for all streams. */
function takeUsual(state: State, timesS: Float64Array, from: number, to: number): number {
  let { lastS, usualS, sumS } = state
  let i = from
  for (; i < to; i++) {
    const timeS = timesS[i]!
    const step = timeS - lastS
    // A usual step is no gap. Not while the usual step is unknown (NaN).
    if (!(step >= usualLow * usualS && step <= usualHigh * usualS)) break
    lastS = timeS
    usualS += (step - usualS) * learning
    sumS += step
  }
  if (i > from) {
    state.lastS = lastS
    state.usualS = usualS
    state.sumS = sumS
    state.count += i - from
    state.unusual = 0
  }
  return i
}
