import type { DeviceFault } from '#contract/bench/bench.ts'
import { createArrivalStamps } from './arrivalStamps.ts'
import type { ClockCourse } from './clockCourse.ts'
import { createDeviceJudge } from './deviceJudge.ts'
import { createDeviceStamps } from './deviceStamps.ts'
import type { DeviceTimeUnit } from './deviceTime.ts'
import { createSequenceNumbers } from './sequenceNumbers.ts'
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
 *   device clock   the device counts its own time (deviceStamps.ts): deviceTime.ts unwraps it to steps; after a jump or a
 *                  restart it goes on by arrival time
 *   arrival clock  the readings carry no time, or none that can be one, as deviceJudge.ts finds (arrivalStamps.ts):
 *                  evenClock.ts gives an even step, from the line that arrivalLine.ts fits to the times at which they arrived
 *   either way     sequenceNumbers.ts says how many readings lie between two, where they are numbered; streamTime.ts adds
 *                  the steps up, rounds, and tells `gap` of missing samples: by the numbers, else by sampleInterval.ts from
 *                  the usual step. While a device restarts it sends nothing: nothing is missing then, and `restarted` is
 *                  told
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
  const stream = createStreamTime(gap)
  const course: ClockCourse = {
    ...{ stream, numbers: createSequenceNumbers(), lastArrivalS: Number.NaN, isCut: false, leftOut: 0, restarts: 0 },
    tellRestart(timeS) {
      course.restarts += 1
      restarted(timeS)
      return timeS
    },
  }
  const byDevice = createDeviceStamps(course, deviceUnit)
  const byArrival = createArrivalStamps(course)
  let kind: 'device' | 'arrival' | null = null
  let none = new Float64Array(0)

  /** Its times so far were none: neither their steps nor the time since the last of them are known. */
  function goOnByArrival(): void {
    stream.relearn()
    byArrival.takeOver()
  }

  function withoutNumbers(length: number): Float64Array {
    if (none.length < length) none = new Float64Array(length).fill(Number.NaN)
    return none
  }

  return {
    stamp(deviceTimeUs, sequence, count, arrivalS, timeS, from = 0) {
      if (count === 0) return 0
      const to = from + count
      const trustedTime = judge.trustsTime()
      judge.see(deviceTimeUs, sequence, from, to, arrivalS)
      if (trustedTime && !judge.trustsTime()) goOnByArrival()
      const numbersOf = judge.trustsSequence() ? sequence : withoutNumbers(to)
      kind = judge.trustsTime() && !Number.isNaN(deviceTimeUs[from]!) ? 'device' : 'arrival'
      if (kind === 'arrival') return byArrival.stamp(numbersOf, from, to, arrivalS, timeS)
      let untimed = 0
      for (let i = from; i < to; i++) {
        timeS[i] = byDevice.stamp(deviceTimeUs[i]!, numbersOf[i]!, arrivalS)
        if (Number.isNaN(timeS[i]!)) untimed += 1
      }
      return untimed
    },
    interrupted() {
      course.isCut = true
      course.numbers.forget()
      judge.reset()
    },
    state: () => ({
      ...(kind === 'arrival'
        ? rate(byArrival.intervalS(), byArrival.jitterS())
        : rate(stream.usualS(), stream.jitterS())),
      clock: kind,
      missingSamples: stream.missing(),
      leftOut: course.leftOut,
      restarts: course.restarts,
      deviceFaults: judge.faults(),
    }),
  }
}

function rate(usualS: number, jitterS: number): Pick<SampleClockState, 'sampleRateHz' | 'jitterS'> {
  return Number.isNaN(usualS) ? { sampleRateHz: null, jitterS: null } : { sampleRateHz: 1 / usualS, jitterS }
}
