import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { suspectNoiseMultiple } from '../stream/glitchFilter.ts'
import { createSignalFront } from '../stream/signalFront.ts'
import { composeResult, type FoundInCurve } from './curveResult.ts'
import { createLoadCurve, type LoadCurve } from './loadCurve.ts'
import { createLoadMemory } from './loadMemory.ts'

/** Evaluates one curve in constant memory; live and stored curves go through the same machine. */
export type CurveEvaluator = {
  /** Takes samples, whose times rise strictly, until the capture is over; returns the index after the last one taken. */
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
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
 * Its result depends on the samples and the settings alone, not on how the samples are cut into blocks.
 * Checked: tests/domain/signal/loading/curveEvaluator.spec.ts, tests/domain/signal/loading/evaluateCurve.spec.ts,
 * tests/reference/corpus.spec.ts.
 */
export function createCurveEvaluator(settings: DetectionSettings): CurveEvaluator {
  const memory = createLoadMemory()
  const found: FoundInCurve = {
    glitches: [],
    gaps: [],
    end: null,
    noise: null,
    // Known when a loading has started.
    sigma: Number.NaN,
    onsetS: Number.NaN,
    zero: Number.NaN,
    intervalS: Number.NaN,
  }
  let load: LoadCurve | null = null
  let samples = 0

  const over = () => load?.over() ?? false

  const front = createSignalFront(settings, {
    rest: memory.takeRest,
    starts: begin,
    loaded(timeS, force, reading, from, to) {
      const next = load!.take(timeS, force, reading, from, to)
      if (over()) front.stop()
      return next
    },
    glitch(startTimeS, endTimeS, jump) {
      if (over()) return
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
    // A start is held for four samples, so that an interval is known.
    const intervalS = interval.usualS()
    const rest = { onsetS: watch.onsetS(), zero: watch.level(), intervalS }
    Object.assign(found, rest, { noise: watch.noise(), sigma: watch.sigma() })
    memory.begin({ zero: rest.zero, noise: watch.sigma(), intervalS })
    load = createLoadCurve(settings, memory, {
      ...rest,
      noise: watch.sigma(),
      isNoisy: watch.isNoisy(),
      threshold: watch.threshold(),
      highest: watch.highest(),
      highestS: watch.highestS(),
    })
  }

  return {
    take(timeS, force, reading, from, to) {
      let i = from
      while (i < to && !over()) i = front.take(timeS, force, reading, i, to)
      samples += i - from
      return i
    },
    over,
    finish() {
      if (!over()) front.finish()
    },
    loading: () => load !== null,
    runningPeak: () => load?.peak() ?? null,
    zero: () => front.watch.level(),
    threshold: () => front.watch.threshold(),
    result() {
      found.end = load === null ? null : load.end()
      forgetFlickers()
      return composeResult(found, memory.means.means(), settings, {
        samples,
        missingSamples: front.interval.missing(),
        intervalS: front.interval.meanS(),
        noiseAtRest: front.watch.noise(),
      })
    },
  }
}
