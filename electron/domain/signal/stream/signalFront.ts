import type { DetectionSettings } from '#contract/breaks/detection.ts'
import { judgeHead } from '../loading/curveHead.ts'
import { createLoadWatch, type LoadWatch } from '../loading/loadWatch.ts'
import { createGlitchFilter } from './glitchFilter.ts'
import { createSampleInterval, type SampleInterval } from './sampleInterval.ts'

/** What the front end tells, in order of time. */
export type FrontListener = {
  /** A good sample; `starts` when it completes the start of a loading. */
  accept(timeS: number, force: number, reading: number, starts: boolean): void
  /** Good samples [from, to) that are more of the same rest; `restfulAt`: index of the last one no different from it, −1: none. */
  rest(timeS: Float64Array, force: Float64Array, from: number, to: number, restfulAt: number): void
  /** As glitchFilter.ts tells it. */
  glitch(startTimeS: number, endTimeS: number, jump: number): void
  gap(startTimeS: number, endTimeS: number, missing: number): void
}

/** The front end of detection: usual interval and gaps, glitches, rest and start of loading. */
export type SignalFront = {
  push(timeS: number, force: number, reading: number): void
  /**
   * Takes samples as long as they are more of the same rest; returns the index of the first that is not. Says what `push`
   * would say, only faster; so does `takeLoaded`.
   */
  takeQuiet(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
  /** Takes samples of a loading as long as none is suspect of being a glitch; returns the index of the first that is. */
  takeLoaded(timeS: Float64Array, force: Float64Array, from: number, to: number): number
  /** Lets go of everything that still waits. */
  finish(): void
  readonly interval: SampleInterval
  readonly watch: LoadWatch
}

/**
 * The first samples are judged together: so many at least, over this time, s, and no more than fit. As many as a block of
 * `idleNoise`, since an SD of fewer is too often far too low.
 */
const headSamples = 16
const headS = 0.2
const headCapacity = 4096
/** Of the start threshold, what the level may rise over the head of a bench at rest. */
const restShareOfThreshold = 0.25

/**
 * Joins the parts that stand before a loading. Once loading has started the watch is left alone.
 * Checked: tests/domain/signal/loading/evaluateCurve.spec.ts.
 */
export function createSignalFront(settings: DetectionSettings, listener: FrontListener): SignalFront {
  const interval = createSampleInterval()
  const watch = createLoadWatch(settings)
  const headTimeS = new Float64Array(headCapacity)
  const headForce = new Float64Array(headCapacity)
  const headReading = new Float64Array(headCapacity)
  let headCount = 0
  let headDone = false
  let started = false
  let lastTimeS = 0
  let noiseSet = -1

  const filter = createGlitchFilter({
    accept(timeS, force, reading) {
      let starts = false
      if (!started) {
        starts = watch.push(timeS, force)
        started = starts
        const noise = watch.sigma()
        if (noise !== noiseSet) {
          filter.setNoise(noise)
          noiseSet = noise
        }
      }
      listener.accept(timeS, force, reading, starts)
    },
    glitch: (startTimeS, endTimeS, jump) => listener.glitch(startTimeS, endTimeS, jump),
  })

  function push(timeS: number, force: number, reading: number): void {
    if (headDone) {
      forward(timeS, force, reading)
      return
    }
    const complete = completesHead(timeS)
    headTimeS[headCount] = timeS
    headForce[headCount] = force
    headReading[headCount] = reading
    headCount += 1
    if (complete) endHead()
  }

  function endHead(): void {
    headDone = true
    if (headCount === 0) return
    const { startThresholdN, capacityN, startCapacityShare } = settings
    const threshold = startThresholdN ?? (capacityN === null ? 0 : startCapacityShare * capacityN)
    interval.learn(headTimeS, headCount)
    const head = judgeHead(headTimeS, headForce, headCount, restShareOfThreshold * threshold)
    watch.begin(head, headTimeS[0]!)
    if (head.atRest) filter.restAt(head.level)
    filter.setNoise(watch.sigma())
    for (let i = 0; i < headCount; i++) {
      i = takeRest(headTimeS, headForce, i, headCount)
      if (i < headCount) forward(headTimeS[i]!, headForce[i]!, headReading[i]!)
    }
  }

  function forward(timeS: number, force: number, reading: number): void {
    noteStep(timeS, lastTimeS)
    lastTimeS = timeS
    filter.push(timeS, force, reading)
  }

  function noteStep(timeS: number, beforeS: number): void {
    const missing = interval.push(timeS)
    if (missing > 0) listener.gap(beforeS, timeS, missing)
  }

  function takeQuiet(
    timeS: Float64Array,
    force: Float64Array,
    reading: Float64Array,
    from: number,
    to: number,
  ): number {
    return headDone ? takeRest(timeS, force, from, to) : takeHead(timeS, force, reading, from, to)
  }

  /** Takes samples of the head up to the one that completes it. */
  function takeHead(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number {
    let i = from
    for (; i < to && !completesHead(timeS[i]!); i++) {
      headTimeS[headCount] = timeS[i]!
      headForce[headCount] = force[i]!
      headReading[headCount] = reading[i]!
      headCount += 1
    }
    return i
  }

  function completesHead(timeS: number): boolean {
    if (headCount + 1 === headCapacity) return true
    return headCount + 1 >= headSamples && timeS - headTimeS[0]! >= headS
  }

  function takeRest(timeS: Float64Array, force: Float64Array, from: number, to: number): number {
    if (started) return from
    const quiet = watch.quietUntil(timeS, force, from, to)
    const next = takeGood(timeS, force, from, quiet)
    if (next > from) listener.rest(timeS, force, from, next, watch.take(timeS, force, from, next))
    return next
  }

  function takeGood(timeS: Float64Array, force: Float64Array, from: number, to: number): number {
    const next = from < to ? filter.take(timeS, force, from, to) : from
    for (let i = from; i < next; ) {
      i = interval.take(timeS, i, next)
      if (i === next) break
      noteStep(timeS[i]!, i > from ? timeS[i - 1]! : lastTimeS)
      i += 1
    }
    if (next > from) lastTimeS = timeS[next - 1]!
    return next
  }

  return {
    push,
    takeQuiet,
    takeLoaded: (timeS, force, from, to) => (headDone && started ? takeGood(timeS, force, from, to) : from),
    finish() {
      if (!headDone) endHead()
      filter.finish()
    },
    interval,
    watch,
  }
}
