import { createSampleInterval, learning, usualHigh, usualLow } from './sampleInterval.ts'

/** The time that is handed out: seconds since the first sample, whole microseconds, strictly rising. */
export type StreamTime = {
  /** Time of the newest sample, s; NaN before the first. */
  lastS(): number
  /** The same before it was rounded to whole microseconds: an even clock goes on from here. */
  exactS(): number
  /** Hands out the first time. */
  first(): number
  /** Moves on to a time, s. `missing`: samples lost before it; null: told by the time step. */
  advance(wantedS: number, missing: number | null): number
  /** The usual step is known: `takeTicks` and `takeEven` may be asked. */
  learnt(): boolean
  /**
   * Hands out times for counters in whole microseconds as long as they go on from `lastUs` by usual steps, one in
   * sequence after another (NaN: not numbered); returns the index of the first that is not so.
   */
  takeTicks(run: Ticks, from: number, to: number, timeS: Float64Array): number
  /** Hands out times at even steps as long as they are usual ones; returns the index of the first that is not so. */
  takeEven(stepS: number, from: number, to: number, timeS: Float64Array): number
  /** Usual step, s; NaN while unknown. */
  usualS(): number
  /** SD of what the steps differ from the usual one, s. */
  jitterS(): number
  missing(): number
}

/** Counters of a device with the number of each, and where they had come to; `takeTicks` moves the latter on. */
export type Ticks = { deviceUs: Float64Array; sequence: Float64Array; lastUs: number; lastSequence: number }

/** The jitter is averaged over about so many steps. */
const jitterMemory = 1 / 256
const microseconds = 1e6
/** After so many readings the usual step is known well enough to count what is missing. */
const learningReadings = 16

/**
 * Rounds to whole microseconds, carrying on what the rounding left over where the clock is even; keeps the usual step
 * (sampleInterval.ts) and the jitter about it; tells `gap` of missing samples.
 *
 *   variance += ((step − usual)² − variance) / 256
 *
 * `takeTicks` and `takeEven` say what `advance` would say sample by sample, only faster.
 * Checked: tests/domain/signal/stream/streamTime.spec.ts, tests/domain/signal/stream/sampleClock.spec.ts.
 */
export function createStreamTime(gap: (timeS: number, missing: number) => void): StreamTime {
  const interval = createSampleInterval()
  const firstTimesS = new Float64Array(learningReadings)
  const state = { lastS: Number.NaN, exactS: Number.NaN, variance: 0, missing: 0, learning: 0 }

  function first(): number {
    state.lastS = 0
    state.exactS = 0
    learn(0)
    return 0
  }

  function advance(wantedS: number, missing: number | null): number {
    const last = state.lastS
    const timeS = Math.max(Math.round(wantedS * microseconds), Math.round(last * microseconds) + 1) / microseconds
    state.lastS = timeS
    state.exactS = wantedS
    const timed = interval.push(timeS)
    const lost = missing ?? timed
    if (lost > 0) {
      state.missing += lost
      gap(timeS, lost)
    }
    if (state.learning < learningReadings) learn(timeS)
    else if (timed === 0 && lost === 0) {
      const deviation = timeS - last - interval.usualS()
      state.variance += (deviation * deviation - state.variance) * jitterMemory
    }
    return timeS
  }

  function learn(timeS: number): void {
    firstTimesS[state.learning] = timeS
    state.learning += 1
    if (state.learning === learningReadings) {
      interval.learn(firstTimesS, learningReadings)
      interval.push(timeS)
    }
  }

  function takeTicks(run: Ticks, from: number, to: number, timeS: Float64Array): number {
    const { deviceUs, sequence } = run
    let { lastUs, lastSequence } = run
    let usualS = interval.usualS()
    let { variance } = state
    const startUs = Math.round(state.lastS * microseconds)
    let streamUs = startUs
    const numbered = !Number.isNaN(lastSequence)
    let i = from
    for (; i < to; i++) {
      const stepUs = deviceUs[i]! - lastUs
      const stepS = stepUs / microseconds
      if (!(stepS >= usualLow * usualS && stepS <= usualHigh * usualS) || Math.floor(stepUs) !== stepUs) break
      const number = sequence[i]!
      if (numbered ? number !== lastSequence + 1 : !Number.isNaN(number)) break
      lastSequence = number
      lastUs += stepUs
      streamUs += stepUs
      timeS[i] = streamUs / microseconds
      usualS += (stepS - usualS) * learning
      const deviation = stepS - usualS
      variance += (deviation * deviation - variance) * jitterMemory
    }
    if (i > from) {
      run.lastUs = lastUs
      run.lastSequence = lastSequence
      state.variance = variance
      passed(streamUs / microseconds, streamUs / microseconds, usualS, (streamUs - startUs) / microseconds, i - from)
    }
    return i
  }

  function takeEven(stepS: number, from: number, to: number, timeS: Float64Array): number {
    let usualS = interval.usualS()
    let { variance, exactS } = state
    const startUs = Math.round(state.lastS * microseconds)
    let lastUs = startUs
    let i = from
    for (; i < to; i++) {
      const wantedS = exactS + stepS
      const streamUs = Math.round(wantedS * microseconds)
      const roundedS = (streamUs - lastUs) / microseconds
      if (!(streamUs > lastUs && roundedS >= usualLow * usualS && roundedS <= usualHigh * usualS)) break
      exactS = wantedS
      lastUs = streamUs
      timeS[i] = streamUs / microseconds
      usualS += (roundedS - usualS) * learning
      const deviation = roundedS - usualS
      variance += (deviation * deviation - variance) * jitterMemory
    }
    if (i > from) {
      state.variance = variance
      passed(lastUs / microseconds, exactS, usualS, (lastUs - startUs) / microseconds, i - from)
    }
    return i
  }

  function passed(lastS: number, exactS: number, usualS: number, sumS: number, count: number): void {
    state.lastS = lastS
    state.exactS = exactS
    interval.passed(lastS, usualS, sumS, count)
  }

  return {
    lastS: () => state.lastS,
    exactS: () => state.exactS,
    first,
    advance,
    learnt: () => state.learning === learningReadings,
    takeTicks,
    takeEven,
    usualS: () => interval.usualS(),
    jitterS: () => Math.sqrt(state.variance),
    missing: () => state.missing,
  }
}
