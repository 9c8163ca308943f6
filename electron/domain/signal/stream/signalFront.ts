import type { DetectionSettings } from '#contract/breaks/detection.ts'
import { judgeHead } from '../rest/curveHead.ts'
import { createLoadWatch, type LoadWatch } from '../rest/loadWatch.ts'
import { createFirstSamples } from './firstSamples.ts'
import { createGlitchFilter } from './glitchFilter.ts'
import { createSampleInterval, type SampleInterval } from './time/sampleInterval.ts'

/** What the front end tells, in order of time. */
export type FrontListener = {
  /** Good samples [from, to) before a loading; `restfulAt`: index of the last one no different from rest, −1: none. */
  rest(timeS: Float64Array, force: Float64Array, from: number, to: number, restfulAt: number): void
  /** The last of those samples has completed the start of a loading. */
  starts(): void
  /** Good samples [from, to) of the loading; returns the index after the last one that belongs to it. */
  loaded(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
  /** As glitchFilter.ts tells it. */
  glitch(startTimeS: number, endTimeS: number, jump: number): void
  gap(startTimeS: number, endTimeS: number, missing: number): void
}

/** The front end of detection: usual interval and gaps, glitches, rest and start of loading. */
export type SignalFront = {
  /** Takes samples, all of them unless it is stopped or gathers the first ones; returns the index after the last one taken. */
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
  /** The listener wants no more: what it was told last was the end of what it looks for. */
  stop(): void
  /** Lets go of everything that still waits. */
  finish(): void
  readonly interval: SampleInterval
  readonly watch: LoadWatch
}

/** Of the start threshold, what the level may rise over the first samples of a bench at rest. */
const restShareOfThreshold = 0.25

/**
 * Joins the parts that stand before a loading. Once loading has started the watch is left alone.
 * Checked: tests/domain/signal/stream/signalFront.spec.ts.
 */
export function createSignalFront(settings: DetectionSettings, listener: FrontListener): SignalFront {
  const interval = createSampleInterval()
  const watch = createLoadWatch(settings)
  const filter = createGlitchFilter({ accept, glitch: listener.glitch })
  const head = createFirstSamples()
  let headDone = false
  let started = false
  let stopped = false

  function take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number {
    if (headDone) return takeOn(timeS, force, reading, from, to)
    const next = head.take(timeS, force, reading, from, to)
    if (head.complete()) endHead()
    return next
  }

  function endHead(): void {
    headDone = true
    const count = head.count()
    if (count === 0) return
    interval.learn(head.timeS, count)
    const judged = judgeHead(head.timeS, head.force, count, restShareOfThreshold * settledThreshold(settings))
    watch.begin(judged, head.timeS[0]!)
    if (judged.atRest) filter.restAt(judged.level)
    filter.setNoise(watch.sigma())
    const next = takeOn(head.timeS, head.force, head.reading, 0, count)
    // They were taken together, whatever came of them.
    countSteps(interval, listener, head.timeS, next, count)
  }

  function takeOn(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number {
    let i = from
    while (i < to && !stopped) {
      const next = started ? takeLoaded(timeS, force, reading, i, to) : takeRest(timeS, force, i, to)
      if (next === i) {
        countSteps(interval, listener, timeS, i, i + 1)
        filter.question(timeS, force, reading, i)
        i += 1
      } else i = next
    }
    return i
  }

  /** Takes samples at rest up to one that is suspect or starts a loading. */
  function takeRest(timeS: Float64Array, force: Float64Array, from: number, to: number): number {
    let restfulAt = -1
    let i = from
    for (; i < to && !started && filter.goodUntil(force, i, i + 1) > i; i++)
      if (watchOne(timeS[i]!, force[i]!)) restfulAt = i
    if (i === from) return i
    countSteps(interval, listener, timeS, from, i)
    tellRest(timeS, force, from, i, restfulAt)
    return i
  }

  /** Whether the sample is no different from rest. */
  function watchOne(timeS: number, force: number): boolean {
    started = watch.push(timeS, force)
    filter.setNoise(watch.sigma())
    return watch.restful()
  }

  function tellRest(timeS: Float64Array, force: Float64Array, from: number, to: number, restfulAt: number): void {
    listener.rest(timeS, force, from, to, restfulAt)
    if (started) listener.starts()
  }

  /** Takes samples of a loading up to one that is suspect or the last that belongs to it. */
  function takeLoaded(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number) {
    const good = filter.goodUntil(force, from, to)
    if (good === from) return from
    const next = listener.loaded(timeS, force, reading, from, good)
    countSteps(interval, listener, timeS, from, next)
    return next
  }

  /** Takes what the filter has questioned and found good. */
  function accept(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): void {
    let restfulAt = -1
    let i = from
    for (; i < to && !started; i++) if (watchOne(timeS[i]!, force[i]!)) restfulAt = i
    if (i > from) tellRest(timeS, force, from, i, restfulAt)
    if (i < to && !stopped) listener.loaded(timeS, force, reading, i, to)
  }

  return {
    take,
    stop() {
      stopped = true
    },
    finish() {
      if (!headDone) endHead()
      filter.finish()
    },
    interval,
    watch,
  }
}

/** The start threshold as far as the settings alone tell it, N; 0: they do not. */
function settledThreshold({ startThresholdN, capacityN, startCapacityShare }: DetectionSettings): number {
  return startThresholdN ?? (capacityN === null ? 0 : startCapacityShare * capacityN)
}

function countSteps(
  interval: SampleInterval,
  listener: FrontListener,
  timeS: Float64Array,
  from: number,
  to: number,
): void {
  for (let i = from; i < to; ) {
    const beforeS = interval.lastS()
    const next = interval.take(timeS, i, to)
    const missing = interval.missingBefore()
    if (missing > 0) listener.gap(next - 1 > i ? timeS[next - 2]! : beforeS, timeS[next - 1]!, missing)
    i = next
  }
}
