import { createArrivalLine } from './arrivalLine.ts'

/** An even clock for readings that carry no time, from the times at which they arrive. */
export type EvenClock = {
  /**
   * `intervals` readings (or lost ones between them) arrived at `arrivalS`. Returns how far the clock must jump before
   * them because the device had paused, s; 0 as a rule.
   */
  arrive(intervals: number, arrivalS: number): number
  /** Time from one reading to the next just now, s; NaN while the clock is learning. */
  stepS(): number
  /** Estimated true interval, s; NaN while the clock is learning. */
  intervalS(): number
  jitterS(): number
  /** The stream was cut off; the next reading comes after a pause. */
  interrupted(): void
}

/** Nothing is handed out before so much arrival time and so many readings. */
const learningS = 1
const learningReadings = 4
/** The clock is pulled towards the fitted line over this time, s ... */
const pullS = 2
/** ... and bent by no more than this share (more while the rate is young: share over seconds since the start). */
const longestBend = 0.001
const youngBend = 0.04
/** A silence longer than this, s, that fewer readings follow than it could hold, was a pause. */
const pauseS = 1
const pauseFillShare = 0.5
/** A clock that lies behind all arrivals of so long a time, s, by more than this, s and intervals, has missed a pause. */
const lateS = 0.1
const lateIntervals = 3
const lateWatchS = 0.5
const jitterMemory = 1 / 64

/**
 * Readings wait in buffers (16 ms in a USB bridge, 64 at a time in a driver, 300 ms in a busy computer) and come in bursts.
 *
 *   line   A = a + b n through the arrivals that waited least (arrivalLine.ts)
 *   step   b (1 + k)      k pulls the clock to the line within 2 s, |k| <= 0.1 %
 *
 * Common practice (a phase-locked loop on minimum delay), no source. Checked: tests/domain/signal/stream/time/evenClock.spec.ts, tests/domain/signal/stream/time/sampleClock.spec.ts.
 */
export function createEvenClock(): EvenClock {
  const line = createArrivalLine()
  const state = {
    n: Number.NaN,
    /** Time that the clock has handed out for reading n, on the scale of arrival times. */
    clockS: Number.NaN,
    step: Number.NaN,
    firstArrivalS: Number.NaN,
    firstN: Number.NaN,
    lastArrivalS: Number.NaN,
    lateStartS: Number.NaN,
    leastLate: Number.POSITIVE_INFINITY,
    variance: 0,
  }
  let cut = false

  function arrive(intervals: number, arrivalS: number): number {
    if (intervals === 0) return 0
    if (Number.isNaN(state.firstArrivalS)) {
      state.firstArrivalS = arrivalS
      state.lastArrivalS = arrivalS
      state.n = intervals
      state.firstN = intervals
      return 0
    }
    const silenceS = arrivalS - state.lastArrivalS
    state.lastArrivalS = arrivalS
    state.n += intervals
    if (Number.isNaN(state.step)) {
      learn(arrivalS)
      return 0
    }
    const jumpS = pause(intervals, arrivalS, silenceS)
    line.see(state.n, arrivalS)
    goOn(intervals, arrivalS)
    return jumpS
  }

  function learn(arrivalS: number): void {
    const readings = state.n - state.firstN
    if (arrivalS - state.firstArrivalS < learningS || readings < learningReadings) return
    state.step = (arrivalS - state.firstArrivalS) / readings
    state.clockS = arrivalS
    line.begin(state.step, state.n, arrivalS)
  }

  /** Moves on by so many steps, a little longer or shorter than the interval, towards the line. */
  function goOn(intervals: number, arrivalS: number): void {
    const intervalS = line.intervalS()
    const elapsedS = Math.max(learningS, arrivalS - state.firstArrivalS)
    const bend = Math.max(longestBend, youngBend / elapsedS)
    const behind = line.at(state.n) - (state.clockS + intervalS * intervals)
    const pull = Math.max(-bend, Math.min(bend, behind / pullS))
    state.step = intervalS * (1 + pull)
    state.clockS += intervals * state.step
    const late = arrivalS - state.clockS
    state.variance += (late * late - state.variance) * jitterMemory
  }

  /** The clock jumps over a pause of the device, at once after a long silence, else when it shows itself late. */
  function pause(intervals: number, arrivalS: number, silenceS: number): number {
    const intervalS = line.intervalS()
    const late = arrivalS - (state.clockS + intervalS * intervals)
    const paused = silenceS > pauseS && intervals < (pauseFillShare * silenceS) / intervalS
    if (paused || cut) {
      cut = false
      return jump(late, arrivalS)
    }
    return jumpWhenLate(late, arrivalS)
  }

  function jumpWhenLate(late: number, arrivalS: number): number {
    if (Number.isNaN(state.lateStartS)) state.lateStartS = arrivalS
    state.leastLate = Math.min(state.leastLate, late)
    if (arrivalS - state.lateStartS < lateWatchS) return 0
    const least = state.leastLate
    state.lateStartS = arrivalS
    state.leastLate = late
    return least > lateS + lateIntervals * line.intervalS() ? jump(least, arrivalS) : 0
  }

  function jump(byS: number, arrivalS: number): number {
    if (!(byS > 0)) return 0
    state.clockS += byS
    line.restart(state.n, arrivalS)
    state.lateStartS = Number.NaN
    state.leastLate = Number.POSITIVE_INFINITY
    return byS
  }

  return {
    arrive,
    stepS: () => state.step,
    intervalS: line.intervalS,
    jitterS: () => Math.sqrt(state.variance),
    interrupted() {
      cut = true
    },
  }
}
