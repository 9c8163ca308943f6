import type { DetectionSettings } from '#contract/records/detection.ts'
import { judgeHead } from './curveHead.ts'
import { createGlitchFilter } from './glitchFilter.ts'
import { createLoadWatch, type LoadWatch } from './loadWatch.ts'
import { createSampleInterval, type SampleInterval } from './sampleInterval.ts'

/** What the front end tells, in order of time. */
export type FrontListener = {
  /** A good sample; `starts` when it completes the start of a loading. */
  accept(timeS: number, force: number, reading: number, starts: boolean): void
  glitch(startTimeS: number, endTimeS: number): void
  gap(startTimeS: number, endTimeS: number, missing: number): void
}

/** The front end of detection: usual interval and gaps, glitches, rest and start of loading. */
export type SignalFront = {
  push(timeS: number, force: number, reading: number): void
  /** Lets go of everything that still waits. */
  finish(): void
  readonly interval: SampleInterval
  readonly watch: LoadWatch
}

/** The first samples are judged together: so many at least, over this time, s, and no more than fit. */
const headSamples = 9
const headS = 0.2
const headCapacity = 4096
/** Of the start threshold, what the level may rise over the head of a bench at rest. */
const restShareOfThreshold = 0.25

/**
 * Joins the parts that stand before a loading. Once loading has started the watch is left alone.
 * Checked: tests/domain/signal/evaluateCurve.spec.ts.
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
    glitch: (startTimeS, endTimeS) => listener.glitch(startTimeS, endTimeS),
  })

  function push(timeS: number, force: number, reading: number): void {
    if (headDone) {
      forward(timeS, force, reading)
      return
    }
    headTimeS[headCount] = timeS
    headForce[headCount] = force
    headReading[headCount] = reading
    headCount += 1
    if ((headCount >= headSamples && timeS - headTimeS[0]! >= headS) || headCount === headCapacity) endHead()
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
    for (let i = 0; i < headCount; i++) forward(headTimeS[i]!, headForce[i]!, headReading[i]!)
  }

  function forward(timeS: number, force: number, reading: number): void {
    const missing = interval.push(timeS)
    if (missing > 0) listener.gap(lastTimeS, timeS, missing)
    lastTimeS = timeS
    filter.push(timeS, force, reading)
  }

  return {
    push,
    finish() {
      if (!headDone) endHead()
      filter.finish()
    },
    interval,
    watch,
  }
}
