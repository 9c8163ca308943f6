import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { suspectNoiseMultiple } from '../stream/glitchFilter.ts'
import { createRecentSamples } from '../stream/recentSamples.ts'
import { createSignalFront } from '../stream/signalFront.ts'
import { composeResult, type FoundInCurve } from './curveResult.ts'
import { createLoadCurve, type LoadCurve } from './loadCurve.ts'
import { createMeanCurve, samplesPerMean } from './meanCurve.ts'
import { createSuddenFall } from './suddenFall.ts'

/** Evaluates one curve sample by sample, in constant memory; live and stored curves go through the same machine. */
export type CurveEvaluator = {
  /** Takes the next sample; true when the capture is over, and from then on. Times rise strictly. */
  push(timeS: number, force: number, reading: number): boolean
  /**
   * Takes samples until the capture is over; returns the index after the last one taken. Gives the same result as
   * `push` for each, only faster.
   */
  pushBlock(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
  over(): boolean
  /** No more samples will come. */
  finish(): void
  /** A loading has started. */
  loading(): boolean
  /** Highest sample of the loading so far, lone glitches left out, a sample or two late; null before it starts. */
  runningPeak(): number | null
  /** Level at rest before the loading. */
  zero(): number
  threshold(): number
  result(): EvaluationResult
}

/** A curve lists so many glitches and gaps each. */
const mostListed = 100

/**
 * The machine of detection for one curve: front end until loading starts, then the rules of `createLoadCurve`.
 * Its result depends on the pushed samples and the settings alone.
 * Checked: tests/domain/signal/loading/evaluateCurve.spec.ts and tests/reference/corpus.spec.ts.
 */
export function createCurveEvaluator(settings: DetectionSettings): CurveEvaluator {
  const recent = createRecentSamples()
  const means = createMeanCurve()
  const found: FoundInCurve = {
    glitches: [],
    gaps: [],
    end: null,
    noise: null,
    sigma: 0,
    onsetS: 0,
    zero: 0,
    intervalS: 0,
  }
  let load: LoadCurve | null = null
  let samples = 0
  let over = false

  const front = createSignalFront(settings, {
    accept(timeS, force, reading, starts) {
      if (over) return
      recent.push(timeS, force)
      if (load !== null) {
        means.push(timeS, force)
        over = load.push(timeS, force, reading)
        return
      }
      // The means begin at the onset, which is known only afterwards: they start anew with every sample at rest.
      if (front.watch.restful()) means.clear()
      else means.push(timeS, force)
      if (starts) begin()
    },
    rest(timeS, force, from, to, restfulAt) {
      recent.take(timeS, force, from, to)
      if (restfulAt >= 0) means.clear()
      means.take(timeS, force, restfulAt >= 0 ? restfulAt + 1 : from, to)
    },
    glitch(startTimeS, endTimeS, jump) {
      if (over) return
      if (found.glitches.length >= mostListed) forgetFlickers()
      if (found.glitches.length < mostListed) found.glitches.push({ startTimeS, endTimeS, jump })
    },
    gap(startTimeS, endTimeS) {
      if (found.gaps.length < mostListed) found.gaps.push({ startTimeS, endTimeS })
    },
  })

  /**
   * While a signal at rest shows one reading alone, nothing is known of noise or resolution, and the first flicker of a
   * coarse converter is held back. It is no glitch where it would not have been suspect by what is known later.
   */
  function forgetFlickers(): void {
    const least = suspectNoiseMultiple * front.watch.sigma()
    found.glitches = found.glitches.filter(({ jump }) => jump > least)
  }

  function begin(): void {
    const { watch, interval } = front
    const intervalS = interval.usualS() || 0
    found.noise = watch.noise()
    found.onsetS = watch.onsetS()
    found.zero = watch.level()
    found.sigma = watch.sigma()
    found.intervalS = intervalS
    const sudden = createSuddenFall({
      zero: watch.level(),
      noise: watch.sigma(),
      samplesPerMean: samplesPerMean(intervalS),
    })
    means.settle(intervalS, sudden.push)
    load = createLoadCurve(settings, recent, {
      onsetS: watch.onsetS(),
      zero: watch.level(),
      noise: watch.sigma(),
      threshold: watch.threshold(),
      intervalS,
      highest: watch.highest(),
      highestS: watch.highestS(),
      firstReachedS: means.firstReachedS,
      suddenFall: sudden.fallen,
    })
  }

  function push(timeS: number, force: number, reading: number): boolean {
    if (over) return true
    samples += 1
    front.push(timeS, force, reading)
    return over
  }

  function pushBlock(
    timeS: Float64Array,
    force: Float64Array,
    reading: Float64Array,
    from: number,
    to: number,
  ): number {
    let i = from
    while (i < to && !over) {
      const next =
        load === null ? front.takeQuiet(timeS, force, reading, i, to) : takeLoaded(load, timeS, force, reading, i, to)
      samples += next - i
      i = next
      if (i === to) break
      push(timeS[i]!, force[i]!, reading[i]!)
      i += 1
    }
    return i
  }

  function takeLoaded(
    running: LoadCurve,
    timeS: Float64Array,
    force: Float64Array,
    reading: Float64Array,
    from: number,
    to: number,
  ): number {
    const next = front.takeLoaded(timeS, force, from, running.plainUntil(timeS, force, from, to))
    recent.take(timeS, force, from, next)
    means.take(timeS, force, from, next)
    running.take(timeS, force, reading, from, next)
    return next
  }

  return {
    push,
    pushBlock,
    over: () => over,
    finish() {
      if (!over) front.finish()
    },
    loading: () => load !== null,
    runningPeak: () => load?.peak() ?? null,
    zero: () => front.watch.level(),
    threshold: () => front.watch.threshold(),
    result() {
      found.end = load === null ? null : load.end()
      forgetFlickers()
      return composeResult(found, means.means(), settings, {
        samples,
        missingSamples: front.interval.missing(),
        intervalS: front.interval.meanS(),
        noiseAtRest: front.watch.noise(),
      })
    },
  }
}
