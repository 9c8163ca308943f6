import { createDeviceTime, type DeviceTimeUnit } from './deviceTime.ts'
import { createEvenClock } from './evenClock.ts'
import { createStreamTime, type Ticks } from './streamTime.ts'

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
   * `from` is the index of the first reading in the arrays. Returns how many were given no time.
   */
  stamp(
    deviceTimeUs: Float64Array,
    sequence: Float64Array,
    count: number,
    arrivalS: number,
    timeS: Float64Array,
    from?: number,
  ): number
  /** The stream was interrupted (unplugged): stream time goes on from here by arrival time, the device may have restarted. */
  interrupted(): void
  state(): SampleClockState
}

const wrap32 = 2 ** 32
/** So many readings in a row that seem to come from the past: the device has restarted its numbers. */
const restartReadings = 8
/** A loss of more samples at once is a restart of the numbers, not a gap. */
const mostMissing = 1_000_000

/**
 * Stream time: seconds since the first sample, whole microseconds, strictly rising (streamTime.ts).
 *
 *   device clock   t = unwrapped device time − that of the first sample; after a jump or a restart it goes on by arrival time
 *   arrival clock  an even clock fitted to the arrival times (evenClock.ts); sequence numbers, where there are any, say how
 *                  many intervals lie between two readings
 *
 * `gap` is told of missing samples: from sequence numbers, else from the time between two samples.
 * Allocates nothing per sample. Checked: tests/domain/signal/stream/sampleClock.spec.ts.
 */
export function createSampleClock(
  deviceUnit: DeviceTimeUnit,
  gap: (timeS: number, missing: number) => void,
): SampleClock {
  const device = createDeviceTime(deviceUnit)
  const even = createEvenClock()
  const stream = createStreamTime(gap)
  const nothing = new Float64Array(0)
  const ticks: Ticks = { deviceUs: nothing, sequence: nothing, lastUs: 0, lastSequence: 0 }
  const state = { lastSequence: Number.NaN, lastArrivalS: 0, leftOut: 0, backwards: 0 }
  let kind: 'device' | 'arrival' | null = null
  let cut = false

  function stamp(
    deviceTimeUs: Float64Array,
    sequence: Float64Array,
    count: number,
    arrivalS: number,
    timeS: Float64Array,
    from = 0,
  ): number {
    if (count === 0) return 0
    const to = from + count
    if (Number.isNaN(deviceTimeUs[from]!)) {
      kind = 'arrival'
      const untimed = stampArrival(sequence, from, to, arrivalS, timeS)
      state.lastArrivalS = arrivalS
      return untimed
    }
    kind = 'device'
    let untimed = 0
    for (let i = from; i < to; ) {
      i = takeTicks(deviceTimeUs, sequence, i, to, timeS)
      if (i === to) state.lastArrivalS = arrivalS
      else {
        const time = stampDevice(deviceTimeUs[i]!, sequence[i]!, arrivalS)
        if (Number.isNaN(time)) untimed += 1
        timeS[i] = time
        i += 1
      }
    }
    return untimed
  }

  /** The way of nearly every reading of a device with a clock. Returns the index of the first that does not go it. */
  function takeTicks(
    deviceTimeUs: Float64Array,
    sequence: Float64Array,
    from: number,
    to: number,
    timeS: Float64Array,
  ): number {
    if (deviceUnit === 'ms' || cut || !stream.learnt()) return from
    ticks.deviceUs = deviceTimeUs
    ticks.sequence = sequence
    ticks.lastUs = device.lastUs()
    ticks.lastSequence = state.lastSequence
    const next = stream.takeTicks(ticks, from, to, timeS)
    if (next > from) {
      device.passed(ticks.lastUs)
      state.lastSequence = ticks.lastSequence
      state.backwards = 0
    }
    return next
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
    if (Number.isNaN(stream.lastS())) return stream.first()
    return stream.advance(stream.lastS() + stepS, numbered && !restarted ? numbers - 1 : null)
  }

  function leaveOut(): number {
    state.leftOut += 1
    return Number.NaN
  }

  function stampArrival(
    sequence: Float64Array,
    from: number,
    to: number,
    arrivalS: number,
    timeS: Float64Array,
  ): number {
    const numbered = isNumbered(sequence, from, to)
    const intervals = numbered ? countIntervals(sequence, from, to, timeS) : to - from
    if (!numbered) state.lastSequence = Number.NaN
    if (cut) even.interrupted()
    cut = false
    let pauseS = even.arrive(intervals, arrivalS)
    const stepS = even.stepS()
    if (Number.isNaN(stepS)) {
      timeS.fill(Number.NaN, from, to)
      return to - from
    }
    let untimed = 0
    for (let i = from; i < to; ) {
      if (!numbered && pauseS === 0 && stream.learnt()) i = stream.takeEven(stepS, i, to, timeS)
      if (i === to) break
      const step = numbered ? timeS[i]! : 1
      if (Number.isNaN(step)) untimed += 1
      else {
        timeS[i] = stampEven(step, stepS, pauseS)
        pauseS = 0
      }
      i += 1
    }
    return untimed
  }

  /** One reading, so many even steps after the last one; `pauseS`: the device had paused before it. */
  function stampEven(step: number, stepS: number, pauseS: number): number {
    if (Number.isNaN(stream.lastS())) return stream.first()
    return stream.advance(stream.exactS() + pauseS + step * stepS, pauseS > 0 ? null : step - 1)
  }

  /** Writes the intervals that each reading is ahead of the one before it to `steps`; returns their sum. */
  function countIntervals(sequence: Float64Array, from: number, to: number, steps: Float64Array): number {
    let intervals = 0
    for (let i = from; i < to; i++) {
      const numbers = passed(sequence[i]!)
      const step = Number.isNaN(numbers) ? 1 : numbers
      steps[i] = step > 0 ? step : Number.NaN
      if (step > 0) intervals += step
      else state.leftOut += 1
    }
    return intervals
  }

  return {
    stamp,
    interrupted() {
      cut = true
      state.lastSequence = Number.NaN
      state.backwards = 0
    },
    state: () => {
      const usualS = kind === 'arrival' ? even.intervalS() : stream.usualS()
      const known = usualS > 0
      return {
        sampleRateHz: known ? 1 / usualS : null,
        jitterS: !known ? null : kind === 'arrival' ? even.jitterS() : stream.jitterS(),
        clock: kind,
        missingSamples: stream.missing(),
        leftOut: state.leftOut,
      }
    },
  }
}

function isNumbered(sequence: Float64Array, from: number, to: number): boolean {
  for (let i = from; i < to; i++) if (!Number.isNaN(sequence[i]!)) return true
  return false
}
