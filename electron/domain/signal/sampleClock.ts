import { createDeviceTime, type DeviceTimeUnit } from './deviceTime.ts'
import { createEvenClock } from './evenClock.ts'
import { createSampleInterval, learning, usualHigh, usualLow } from './sampleInterval.ts'

export type SampleClockState = {
  /** null until a rate is known. */
  sampleRateHz: number | null
  /** SD of what the steps differ from the usual one (device), or of arrival about the even clock (arrival), s. */
  jitterS: number | null
  clock: 'device' | 'arrival' | null
  missingSamples: number
  /** Samples that came twice or too late and were left out. */
  leftOut: number
}

/** Gives every reading its stream time. */
export type SampleClock = {
  /**
   * Times `count` readings that arrived together: device time in µs and sequence number of each (NaN where the line has
   * none), written to `timeS`. NaN there: no sample (a duplicate, one out of order, or the clock is still learning).
   * `from` is the index of the first reading in the arrays.
   */
  stamp(
    deviceTimeUs: Float64Array,
    sequence: Float64Array,
    count: number,
    arrivalS: number,
    timeS: Float64Array,
    from?: number,
  ): void
  /** The stream was interrupted (unplugged): stream time goes on from here by arrival time, the device may have restarted. */
  interrupted(): void
  state(): SampleClockState
}

const wrap32 = 2 ** 32
/** So many readings in a row that seem to come from the past: the device has restarted its numbers. */
const restartReadings = 8
/** The jitter is averaged over about so many steps. */
const jitterMemory = 1 / 256
const microseconds = 1e6
/** A loss of more samples at once is a restart of the numbers, not a gap. */
const mostMissing = 1_000_000
/** After so many readings the usual step is known well enough to count what is missing. */
const learningReadings = 16

/**
 * Stream time: seconds since the first sample, whole microseconds, strictly rising.
 *
 *   device clock   t = unwrapped device time − that of the first sample; after a jump or a restart it goes on by arrival time
 *   arrival clock  an even clock fitted to the arrival times (evenClock.ts); sequence numbers, where there are any, say how
 *                  many intervals lie between two readings
 *
 * `gap` is told of missing samples: from sequence numbers, else from the time between two samples.
 * Allocates nothing per sample. Checked: tests/domain/signal/sampleClock.spec.ts.
 */
export function createSampleClock(
  deviceUnit: DeviceTimeUnit,
  gap: (timeS: number, missing: number) => void,
): SampleClock {
  const device = createDeviceTime(deviceUnit)
  const even = createEvenClock()
  const interval = createSampleInterval()
  const learnt = new Float64Array(learningReadings)
  const state = {
    lastTimeS: Number.NaN,
    lastSequence: Number.NaN,
    lastArrivalS: 0,
    variance: 0,
    missing: 0,
    leftOut: 0,
    backwards: 0,
    learning: 0,
  }
  let kind: 'device' | 'arrival' | null = null
  let cut = false

  function stamp(
    deviceTimeUs: Float64Array,
    sequence: Float64Array,
    count: number,
    arrivalS: number,
    timeS: Float64Array,
    from = 0,
  ): void {
    if (count === 0) return
    kind = Number.isNaN(deviceTimeUs[from]!) ? 'arrival' : 'device'
    if (kind === 'arrival') {
      stampArrival(sequence, from, count, arrivalS, timeS)
      state.lastArrivalS = arrivalS
      return
    }
    for (let i = from; i < from + count; ) {
      i = stampEvenRun(deviceTimeUs, sequence, i, from + count, timeS)
      if (i === from + count) state.lastArrivalS = arrivalS
      else {
        timeS[i] = stampDevice(deviceTimeUs[i]!, sequence[i]!, arrivalS)
        i += 1
      }
    }
  }

  /**
   * The way of nearly every reading: a whole number of microseconds after the last one, next in sequence, by a usual step.
   * Returns the index of the first reading that is not so. Says what `stampDevice` would say, only faster.
   */
  function stampEvenRun(
    deviceTimeUs: Float64Array,
    sequence: Float64Array,
    from: number,
    to: number,
    timeS: Float64Array,
  ): number {
    if (deviceUnit === 'ms' || cut || state.learning < learningReadings) return from
    let usualS = interval.usualS()
    let lastUs = device.lastUs()
    let lastSequence = state.lastSequence
    let streamUs = Math.round(state.lastTimeS * microseconds)
    let variance = state.variance
    const numbered = !Number.isNaN(lastSequence)
    const startUs = streamUs
    let i = from
    for (; i < to; i++) {
      const stepUs = deviceTimeUs[i]! - lastUs
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
      device.passed(lastUs)
      state.lastSequence = lastSequence
      state.lastTimeS = streamUs / microseconds
      state.variance = variance
      state.backwards = 0
      interval.passed(state.lastTimeS, usualS, (streamUs - startUs) / microseconds, i - from)
    }
    return i
  }

  /** Sequence numbers passed since the last reading: 1 without gap; 0 or less: leave it out; NaN: restarted. */
  function passed(sequence: number): number {
    if (Number.isNaN(sequence) || Number.isNaN(state.lastSequence)) {
      state.lastSequence = sequence
      return 1
    }
    const ahead = (((sequence - state.lastSequence) % wrap32) + wrap32) % wrap32
    if (ahead > 0 && ahead <= mostMissing) {
      state.lastSequence = sequence
      state.backwards = 0
      return ahead
    }
    if (ahead === 0) return 0
    state.backwards += 1
    if (state.backwards < restartReadings) return -1
    state.backwards = 0
    state.lastSequence = sequence
    return Number.NaN
  }

  function stampDevice(deviceUs: number, sequence: number, arrivalS: number): number {
    const numbers = passed(sequence)
    if (numbers <= 0) return leaveOut()
    const sinceArrivalS = Math.max(0, arrivalS - state.lastArrivalS)
    const restarted = Number.isNaN(numbers) || cut
    const numbered = !Number.isNaN(sequence)
    const stepS = device.step(deviceUs, sinceArrivalS, restarted, numbered)
    if (Number.isNaN(stepS)) return leaveOut()
    cut = false
    // Of readings that were left out arrival says nothing: a restart is timed from the last one that counted.
    state.lastArrivalS = arrivalS
    if (Number.isNaN(state.lastTimeS)) return first()
    return advance(state.lastTimeS + stepS, numbered && !restarted ? numbers - 1 : null)
  }

  function first(): number {
    state.lastTimeS = 0
    learn(0)
    return 0
  }

  /** Moves stream time on. `missing` null: told by the time step. */
  function advance(wantedS: number, missing: number | null): number {
    const last = state.lastTimeS
    const timeS = Math.max(Math.round(wantedS * microseconds), Math.round(last * microseconds) + 1) / microseconds
    state.lastTimeS = timeS
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
    learnt[state.learning] = timeS
    state.learning += 1
    if (state.learning === learningReadings) {
      interval.learn(learnt, learningReadings)
      interval.push(timeS)
    }
  }

  function leaveOut(): number {
    state.leftOut += 1
    return Number.NaN
  }

  function stampArrival(
    sequence: Float64Array,
    from: number,
    count: number,
    arrivalS: number,
    timeS: Float64Array,
  ): void {
    // First the intervals that each reading is ahead of the one before it, then their times.
    let intervals = 0
    for (let i = from; i < from + count; i++) {
      const numbers = passed(sequence[i]!)
      const step = Number.isNaN(numbers) ? 1 : numbers
      timeS[i] = step > 0 ? step : Number.NaN
      if (step > 0) intervals += step
      else state.leftOut += 1
    }
    if (cut) even.interrupted()
    cut = false
    const jumpS = even.arrive(intervals, arrivalS)
    const stepS = even.stepS()
    for (let i = from, fresh = true; i < from + count; i++) {
      const step = timeS[i]!
      if (Number.isNaN(step)) continue
      if (Number.isNaN(stepS)) {
        timeS[i] = Number.NaN
        continue
      }
      if (Number.isNaN(state.lastTimeS)) timeS[i] = first()
      else if (fresh && jumpS > 0) timeS[i] = advance(state.lastTimeS + jumpS + step * stepS, null)
      else timeS[i] = advance(state.lastTimeS + step * stepS, step - 1)
      fresh = false
    }
  }

  return {
    stamp,
    interrupted() {
      cut = true
      state.lastSequence = Number.NaN
      state.backwards = 0
    },
    state: () => {
      const usualS = kind === 'arrival' ? even.intervalS() : interval.usualS()
      const known = usualS > 0
      return {
        sampleRateHz: known ? 1 / usualS : null,
        jitterS: !known ? null : kind === 'arrival' ? even.jitterS() : Math.sqrt(state.variance),
        clock: kind,
        missingSamples: state.missing,
        leftOut: state.leftOut,
      }
    },
  }
}
