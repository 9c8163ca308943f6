import type { DeviceFault } from '#contract/bench/bench.ts'
import { createDeviceJudge } from './deviceJudge.ts'
import { createDeviceTime, type DeviceTimeUnit } from './deviceTime.ts'
import { createEvenClock } from './evenClock.ts'
import { createSequenceNumbers, type SequenceNumbers } from './sequenceNumbers.ts'
import { createStreamTime } from './streamTime.ts'

export type SampleClockState = {
  /** null until a rate is known. */
  sampleRateHz: number | null
  /** SD of what the steps differ from the usual one (device), or of arrival about the even clock (arrival), s. */
  jitterS: number | null
  clock: 'device' | 'arrival' | null
  missingSamples: number
  /** Samples that came twice or too late and were left out. */
  leftOut: number
  /** How often the device has restarted. */
  restarts: number
  /** What is wrong with the numbers of the device, which are not used for that. */
  deviceFaults: readonly DeviceFault[]
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

/**
 * Stream time: seconds since the first sample, whole microseconds, strictly rising. How the files of this folder fit together:
 *
 *   device clock   the device counts its own time: deviceTime.ts unwraps it to steps; after a jump or a restart it goes on
 *                  by arrival time
 *   arrival clock  the readings carry no time, or none that can be one (deviceJudge.ts): evenClock.ts gives an even step, from the line that arrivalLine.ts fits to
 *                  the times at which they arrived
 *   either way     sequenceNumbers.ts says how many readings lie between two, where they are numbered; streamTime.ts adds
 *                  the steps up, rounds, and tells `gap` of missing samples: by the numbers, else by sampleInterval.ts from
 *                  the usual step. While a device restarts it sends nothing: nothing is missing then, and `restarted` is told
 *
 * A stored curve knows its times alone: stretches.ts cuts it at the same gaps, with the same sampleInterval.ts.
 * Allocates nothing per sample. Checked: tests/domain/signal/stream/time/sampleClock.spec.ts.
 */
export function createSampleClock(
  deviceUnit: DeviceTimeUnit,
  gap: (timeS: number, missing: number) => void,
  restarted: (timeS: number) => void = () => {},
): SampleClock {
  const judge = createDeviceJudge(deviceUnit)
  const device = createDeviceTime(deviceUnit)
  const even = createEvenClock()
  const stream = createStreamTime(gap)
  const numbers = createSequenceNumbers()
  const state = { lastArrivalS: 0, leftOut: 0, restarts: 0, untimedFromS: Number.NaN }
  let kind: 'device' | 'arrival' | null = null
  let cut = false
  let none = new Float64Array(0)

  function stampDevice(deviceUs: number, sequence: number, arrivalS: number): number {
    const sinceArrivalS = Math.max(0, arrivalS - state.lastArrivalS)
    const passed = numbers.passed(sequence, device.beginsAnew(deviceUs, sinceArrivalS))
    if (passed <= 0) return leaveOut()
    const setAnew = Number.isNaN(passed) || cut
    const numbered = !Number.isNaN(sequence)
    const stepS = device.step(deviceUs, sinceArrivalS, setAnew, numbered)
    if (Number.isNaN(stepS)) return leaveOut()
    const hasRestarted = device.wentBack() && !cut
    cut = false
    // Of readings that were left out arrival says nothing: a restart is timed from the last one that counted.
    state.lastArrivalS = arrivalS
    if (Number.isNaN(stream.lastS())) return stream.first()
    const wantedS = stream.lastS() + stepS
    if (hasRestarted) return tellRestart(stream.advance(wantedS, 0))
    return stream.advance(wantedS, numbered && !setAnew ? passed - 1 : Number.NaN)
  }

  function tellRestart(timeS: number): number {
    state.restarts += 1
    restarted(timeS)
    return timeS
  }

  /** Its times so far were none: neither their steps nor the time since the last of them are known. */
  function goOnByArrival(): void {
    stream.relearn()
    state.untimedFromS = state.lastArrivalS
  }

  function withoutNumbers(length: number): Float64Array {
    if (none.length < length) none = new Float64Array(2 * length).fill(Number.NaN)
    return none
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
    const { intervals, outOfTurn } = countIntervals(numbers, sequence, from, to, timeS)
    state.leftOut += outOfTurn
    if (cut) even.interrupted()
    cut = false
    state.lastArrivalS = arrivalS
    let pauseS = even.arrive(intervals, arrivalS)
    const stepS = even.stepS()
    if (!Number.isNaN(stepS) && !Number.isNaN(state.untimedFromS)) {
      pauseS = Math.max(pauseS, arrivalS - state.untimedFromS)
      state.untimedFromS = Number.NaN
    }
    let untimed = 0
    for (let i = from; i < to; i++) {
      const steps = Number.isNaN(stepS) ? Number.NaN : timeS[i]!
      if (Number.isNaN(steps)) {
        untimed += 1
        timeS[i] = Number.NaN
        continue
      }
      timeS[i] = stampEven(steps, stepS, pauseS)
      pauseS = 0
    }
    return untimed
  }

  /** One reading, so many even steps after the last one, 0: its numbers begin anew; `pauseS`: the device had paused before it. */
  function stampEven(steps: number, stepS: number, pauseS: number): number {
    if (Number.isNaN(stream.lastS())) return stream.first()
    if (steps === 0) return tellRestart(stream.advance(stream.exactS() + pauseS + stepS, 0))
    return stream.advance(stream.exactS() + pauseS + steps * stepS, pauseS > 0 ? Number.NaN : steps - 1)
  }

  return {
    stamp(deviceTimeUs, sequence, count, arrivalS, timeS, from = 0) {
      if (count === 0) return 0
      const to = from + count
      const trustedTime = judge.trustsTime()
      if (judge.see(deviceTimeUs, sequence, from, to, arrivalS) && trustedTime && !judge.trustsTime()) goOnByArrival()
      const numbersOf = judge.trustsSequence() ? sequence : withoutNumbers(to)
      kind = judge.trustsTime() && !Number.isNaN(deviceTimeUs[from]!) ? 'device' : 'arrival'
      if (kind === 'arrival') return stampArrival(numbersOf, from, to, arrivalS, timeS)
      let untimed = 0
      for (let i = from; i < to; i++) {
        timeS[i] = stampDevice(deviceTimeUs[i]!, numbersOf[i]!, arrivalS)
        if (Number.isNaN(timeS[i]!)) untimed += 1
      }
      return untimed
    },
    interrupted() {
      cut = true
      numbers.forget()
      judge.reset()
    },
    state: () => ({
      ...(kind === 'arrival' ? rate(even.intervalS(), even.jitterS()) : rate(stream.usualS(), stream.jitterS())),
      clock: kind,
      missingSamples: stream.missing(),
      leftOut: state.leftOut,
      restarts: state.restarts,
      deviceFaults: judge.faults(),
    }),
  }
}

function rate(usualS: number, jitterS: number): Pick<SampleClockState, 'sampleRateHz' | 'jitterS'> {
  return usualS > 0 ? { sampleRateHz: 1 / usualS, jitterS } : { sampleRateHz: null, jitterS: null }
}

/**
 * Writes the intervals that each reading is ahead of the one before it to `steps`, NaN for one that comes twice or too late,
 * 0 for one with which the numbers begin anew; returns their sum, and how many came so.
 */
function countIntervals(
  numbers: SequenceNumbers,
  sequence: Float64Array,
  from: number,
  to: number,
  steps: Float64Array,
): { intervals: number; outOfTurn: number } {
  let intervals = 0
  let outOfTurn = 0
  for (let i = from; i < to; i++) {
    const passed = numbers.passed(sequence[i]!)
    if (Number.isNaN(passed)) {
      steps[i] = 0
      intervals += 1
      continue
    }
    steps[i] = passed > 0 ? passed : Number.NaN
    if (passed > 0) intervals += passed
    else outOfTurn += 1
  }
  return { intervals, outOfTurn }
}
