// Held by tests/domain/signal/stream/time/sampleClock.spec.ts.
import type { ClockCourse } from './clockCourse.ts'
import { createEvenClock } from './evenClock.ts'
import type { SequenceNumbers } from './sequenceNumbers.ts'

/** Gives readings an even time, from when they arrive. */
export type ArrivalStamps = {
  /** Writes the times of readings [from, to), NaN for none; returns how many have none. */
  stamp(sequence: Float64Array, from: number, to: number, arrivalS: number, timeS: Float64Array): number
  /** Times of another kind end here: what passes until the first even one is not lost. */
  takeOver(): void
  /** Estimated true interval, s; NaN while the clock is learning. */
  intervalS(): number
  jitterS(): number
}

/** No reading yet. */
export function createArrivalStamps(course: ClockCourse): ArrivalStamps {
  const { stream, numbers } = course
  const even = createEvenClock()
  /** From when on nothing was timed, s of arrival; NaN: all was. */
  let untimedFromS = Number.NaN

  /** One reading, so many even steps after the last one, 0: its numbers begin anew; `pauseS`: the device had paused before it. */
  function stampEven(steps: number, stepS: number, pauseS: number): number {
    if (Number.isNaN(stream.lastS())) return stream.first()
    if (steps === 0) return course.tellRestart(stream.advance(stream.exactS() + pauseS + stepS, 0))
    return stream.advance(stream.exactS() + pauseS + steps * stepS, pauseS > 0 ? Number.NaN : steps - 1)
  }

  return {
    stamp(sequence, from, to, arrivalS, timeS) {
      const { intervals, outOfTurn } = countIntervals(numbers, sequence, from, to, timeS)
      course.leftOut += outOfTurn
      if (course.isCut) even.interrupted()
      course.isCut = false
      course.lastArrivalS = arrivalS
      let pauseS = even.arrive(intervals, arrivalS)
      const stepS = even.stepS()
      if (!Number.isNaN(stepS) && !Number.isNaN(untimedFromS)) {
        pauseS = Math.max(pauseS, arrivalS - untimedFromS)
        untimedFromS = Number.NaN
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
    },
    takeOver() {
      untimedFromS = course.lastArrivalS
    },
    intervalS: even.intervalS,
    jitterS: even.jitterS,
  }
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
