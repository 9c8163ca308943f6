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
/** Of each window this long, s, only the arrival that waited least counts: waiting makes readings late, never early. */
const windowS = 1
const keptWindows = 30
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
 *   line   A = a + b n by least squares through the earliest arrival (least A − b n) of each of the last 30 windows of 1 s
 *   step   b (1 + k)      k pulls the clock to the line within 2 s, |k| <= 0.1 %
 *
 * Common practice (a phase-locked loop on minimum delay), no source. Checked: tests/domain/signal/stream/sampleClock.spec.ts.
 */
export function createEvenClock(): EvenClock {
  const points = { n: new Float64Array(keptWindows), a: new Float64Array(keptWindows), count: 0, next: 0 }
  const state = {
    n: 0,
    /** Time that the clock has handed out for reading n, on the scale of arrival times. */
    clockS: 0,
    b: Number.NaN,
    step: Number.NaN,
    firstArrivalS: Number.NaN,
    firstN: 0,
    lastArrivalS: 0,
    windowStartS: 0,
    bestN: 0,
    bestA: Number.POSITIVE_INFINITY,
    lineN: 0,
    lineA: 0,
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
      state.windowStartS = arrivalS
      state.n = intervals
      state.firstN = intervals
      return 0
    }
    const silenceS = arrivalS - state.lastArrivalS
    state.lastArrivalS = arrivalS
    state.n += intervals
    if (Number.isNaN(state.b)) {
      learn(arrivalS)
      return 0
    }
    const jumpS = pause(intervals, arrivalS, silenceS)
    observe(arrivalS)
    const elapsedS = Math.max(learningS, arrivalS - state.firstArrivalS)
    const bend = Math.max(longestBend, youngBend / elapsedS)
    const wanted = state.lineA + state.b * (state.n - state.lineN)
    const behind = wanted - (state.clockS + state.b * intervals)
    const pull = Math.max(-bend, Math.min(bend, behind / pullS))
    state.step = state.b * (1 + pull)
    state.clockS += intervals * state.step
    const late = arrivalS - state.clockS
    state.variance += (late * late - state.variance) * jitterMemory
    return jumpS
  }

  function learn(arrivalS: number): void {
    const readings = state.n - state.firstN
    if (arrivalS - state.firstArrivalS < learningS || readings < learningReadings) return
    state.b = (arrivalS - state.firstArrivalS) / readings
    state.step = state.b
    state.clockS = arrivalS
    startLine(arrivalS)
  }

  function startLine(arrivalS: number): void {
    points.count = 0
    points.next = 0
    state.lineN = state.n
    state.lineA = arrivalS
    state.windowStartS = arrivalS
    state.bestA = Number.POSITIVE_INFINITY
    state.lateStartS = Number.NaN
    state.leastLate = Number.POSITIVE_INFINITY
  }

  /** The clock jumps over a pause of the device, at once after a long silence, else when it shows itself late. */
  function pause(intervals: number, arrivalS: number, silenceS: number): number {
    const paused = silenceS > pauseS && intervals < (pauseFillShare * silenceS) / state.b
    if (paused || cut) {
      cut = false
      return jump(arrivalS - state.b * intervals - state.clockS, arrivalS)
    }
    const late = arrivalS - (state.clockS + state.b * intervals)
    if (Number.isNaN(state.lateStartS)) state.lateStartS = arrivalS
    state.leastLate = Math.min(state.leastLate, late)
    if (arrivalS - state.lateStartS < lateWatchS) return 0
    const least = state.leastLate
    state.lateStartS = arrivalS
    state.leastLate = late
    return least > lateS + lateIntervals * state.b ? jump(least, arrivalS) : 0
  }

  function jump(byS: number, arrivalS: number): number {
    if (!(byS > 0)) return 0
    state.clockS += byS
    startLine(arrivalS)
    return byS
  }

  function observe(arrivalS: number): void {
    const delay = arrivalS - state.b * state.n
    if (delay < state.bestA - state.b * state.bestN) {
      state.bestA = arrivalS
      state.bestN = state.n
    }
    if (arrivalS - state.windowStartS < windowS) return
    points.n[points.next] = state.bestN
    points.a[points.next] = state.bestA
    points.next = (points.next + 1) % keptWindows
    points.count = Math.min(keptWindows, points.count + 1)
    state.windowStartS = arrivalS
    state.bestA = Number.POSITIVE_INFINITY
    fit()
  }

  function fit(): void {
    const { count } = points
    let meanN = 0
    let meanA = 0
    for (let i = 0; i < count; i++) {
      meanN += points.n[i]! / count
      meanA += points.a[i]! / count
    }
    state.lineN = meanN
    state.lineA = meanA
    if (count < 3) return
    let snn = 0
    let sna = 0
    for (let i = 0; i < count; i++) {
      const n = points.n[i]! - meanN
      snn += n * n
      sna += n * (points.a[i]! - meanA)
    }
    const b = sna / snn
    if (b > 0) state.b = b
  }

  return {
    arrive,
    stepS: () => state.step,
    intervalS: () => state.b,
    jitterS: () => Math.sqrt(state.variance),
    interrupted() {
      cut = true
    },
  }
}
