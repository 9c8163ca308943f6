import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { createSampleHistory } from '../stream/sampleHistory.ts'
import { createSignalFront, type SignalFront } from '../stream/signalFront.ts'
import { type CurveEvaluator, createCurveEvaluator } from './curveEvaluator.ts'
import { createReleaseWatch, type ReleaseWatch } from './releaseWatch.ts'

/** A capture that has begun. */
export type CaptureStart = {
  /** So many of the newest pushed samples, the newest included, belong to the capture already. */
  samples: number
  /** Stream time of the capture's first sample, s: zero of the times in its result. */
  firstTimeS: number
  /** The settings to record: with the start threshold in force. */
  settings: DetectionSettings
}

/** What the detector tells. Both are called from within `push`, `pushBlock` or `finish`. */
export type DetectorListener = {
  begin(start: CaptureStart): void
  /** The newest pushed sample is the last of the capture. Times in the result count from the capture's first sample. */
  end(result: EvaluationResult): void
}

/** Finds breaks in an endless stream, in bounded memory. */
export type BreakDetector = {
  /** Takes the next sample: stream time in whole microseconds that rises strictly, force after tare, reading for the end codes. */
  push(timeS: number, force: number, reading: number): void
  /**
   * Takes the samples of arrays from index `from` until a capture begins or ends, or up to `to`; returns the index after
   * the newest one taken. The same answers as `push` for each, only faster.
   */
  pushBlock(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
  /** Ends a running capture as it stands (the device went away, listening stops) and forgets the rest. */
  finish(): void
  /** Forgets the signal at rest, because tare or scale have changed. Throws TypeError while a capture runs. */
  reset(): void
  capturing(): boolean
  /** Peak of the loading so far, by the rules that make the result; null while none runs. */
  runningPeak(): number | null
  /** Noise SD at rest and the start threshold in force, in the unit of the force; null while unknown. */
  atRest(): { noise: number | null; startThreshold: number | null }
}

/** Onset is looked for so far back from the moment when loading was noticed, s: a slow toe stays below the threshold. */
const longestToeS = 10
/** A capture begins with so many samples at rest at least, where there are. */
const leastPreTriggerSamples = 24
/** A capture in which the evaluation sees no load after this time, s, is given up. */
const giveUpS = 10
/**
 * A level at rest so many start thresholds below zero is no drift: something was lifted off, or the cell is wired in reverse.
 * Chosen on drawn streams, no source.
 */
const liftedThresholds = 3
const microseconds = 1e6

/** Most samples that a capture may begin with: what a session must keep to be able to store them. */
export const longestPreTriggerS = (settings: Pick<DetectionSettings, 'preTriggerS'>): number =>
  settings.preTriggerS + longestToeS

/**
 * The live detector: watches the signal at rest, begins a capture `preTriggerS` before the onset when loading starts,
 * feeds it to the machine that also evaluates stored curves, and waits after a break until the load is gone.
 * Evaluating the captured samples with the recorded settings gives the same result.
 *
 * Checked: tests/domain/signal/loading/breakDetector.spec.ts, tests/reference/corpus.spec.ts, tests/soak/detector.spec.ts.
 */
export function createBreakDetector(settings: DetectionSettings, listener: DetectorListener): BreakDetector {
  const history = createSampleHistory(longestPreTriggerS(settings), leastPreTriggerSamples)
  let front = createFront()
  let starts = false
  let cameBack = false
  let told = 0
  let release: ReleaseWatch | null = null
  let evaluator: CurveEvaluator | null = null
  let originS = 0
  let beganS = 0
  let captureNoise = 0
  let relativeS = new Float64Array(1024)

  function createFront(): SignalFront {
    return createSignalFront(settings, {
      accept(_timeS, _force, _reading, starting) {
        if (starting) starts = true
      },
      rest() {},
      glitch() {},
      gap() {},
    })
  }

  function push(timeS: number, force: number, reading: number): void {
    if (evaluator !== null) {
      pushCapture(evaluator, timeS, force, reading)
      return
    }
    history.push(timeS, force, reading)
    if (release !== null) {
      if (!release.push(timeS, force)) return
      watchAfresh()
    }
    front.push(timeS, force, reading)
    if (!starts) return
    starts = false
    if (comesBackToZero(force)) watchAfresh()
    else begin(timeS)
  }

  /** A rise that only leads back to zero is no load: what was lifted off is put back, or a reversed cell let go. */
  function comesBackToZero(force: number): boolean {
    const { watch } = front
    // Slowly it comes back in several rises, the last of them from a level near zero.
    const least = cameBack ? 1 : liftedThresholds
    cameBack = force <= watch.threshold() && watch.level() < -least * watch.threshold()
    return cameBack
  }

  /** The bench is at another level. The samples since then are too few to rest on: the front begins with the newest. */
  function watchAfresh(): void {
    release = null
    front = createFront()
  }

  function pushBlock(
    timeS: Float64Array,
    force: Float64Array,
    reading: Float64Array,
    from: number,
    to: number,
  ): number {
    const toldBefore = told
    let i = from
    while (i < to && told === toldBefore) {
      if (evaluator?.loading()) {
        i = takeCapture(evaluator, timeS, force, reading, i, to)
        continue
      }
      if (release !== null) {
        const met = release.take(timeS, force, i, to)
        history.take(timeS, force, reading, i, met)
        i = met
        if (i === to) break
        watchAfresh()
      }
      if (evaluator === null) {
        const next = front.takeQuiet(timeS, force, reading, i, to)
        history.take(timeS, force, reading, i, next)
        i = next
        if (i === to) break
      }
      push(timeS[i]!, force[i]!, reading[i]!)
      i += 1
    }
    return i
  }

  function takeCapture(
    running: CurveEvaluator,
    timeS: Float64Array,
    force: Float64Array,
    reading: Float64Array,
    from: number,
    to: number,
  ): number {
    const next = running.pushBlock(sinceOrigin(timeS, from, to), force, reading, from, to)
    if (running.over()) end(running)
    return next
  }

  /** Times since the capture's first sample in whole microseconds, at the same indices. */
  function sinceOrigin(timeS: Float64Array, from: number, to: number): Float64Array {
    if (relativeS.length < to) relativeS = new Float64Array(2 * to)
    subtractOrigin(originS, timeS, from, to, relativeS)
    return relativeS
  }

  function pushCapture(running: CurveEvaluator, timeS: number, force: number, reading: number): void {
    const over = running.push(Math.round((timeS - originS) * microseconds) / microseconds, force, reading)
    if (over) end(running)
    else if (timeS - beganS > giveUpS && !running.loading()) {
      running.finish()
      end(running)
    }
  }

  function begin(timeS: number): void {
    const { watch } = front
    const threshold = watch.threshold()
    const recorded: DetectionSettings = threshold > 0 ? { ...settings, startThresholdN: threshold } : settings
    const onset = history.firstAtOrAfter(watch.onsetS())
    let first = Math.min(history.firstAtOrAfter(watch.onsetS() - settings.preTriggerS), onset - leastPreTriggerSamples)
    first = Math.max(0, first)
    const kept = history.copyFrom(first)
    const count = kept.timeS.length
    first = 0
    captureNoise = watch.sigma()
    for (;;) {
      const attempt = createCurveEvaluator(recorded)
      originS = kept.timeS[first]!
      const next = attempt.pushBlock(sinceOrigin(kept.timeS, first, count), kept.force, kept.reading, first, count)
      if (!attempt.over() || next === count) {
        evaluator = attempt
        beganS = timeS
        told += 1
        listener.begin({ samples: count - first, firstTimeS: originS, settings: recorded })
        if (attempt.over()) end(attempt)
        return
      }
      // Something before the loading looked like one and ended: the capture begins after it.
      first = next
    }
  }

  function end(running: CurveEvaluator): void {
    told += 1
    const result = running.result()
    const zero = running.zero()
    const threshold = running.threshold()
    evaluator = null
    forget()
    release =
      result.outcome === 'break' && result.peakN !== null
        ? createReleaseWatch({ zero, peak: result.peakN, threshold, noise: captureNoise })
        : null
    listener.end(result)
  }

  function forget(): void {
    history.clear()
    front = createFront()
    cameBack = false
  }

  return {
    push,
    pushBlock,
    finish() {
      const running = evaluator
      if (running !== null) {
        running.finish()
        end(running)
      }
      release = null
      forget()
    },
    reset() {
      if (evaluator !== null) throw new TypeError('reset requires that no capture runs')
      release = null
      forget()
    },
    capturing: () => evaluator !== null,
    runningPeak: () => evaluator?.runningPeak() ?? null,
    atRest() {
      const threshold = front.watch.threshold()
      return { noise: front.watch.noise(), startThreshold: threshold > 0 ? threshold : null }
    },
  }
}

/** Outside the closure, so that the compiler keeps one loop for all detectors. */
function subtractOrigin(originS: number, timeS: Float64Array, from: number, to: number, relativeS: Float64Array): void {
  for (let i = from; i < to; i++) relativeS[i] = Math.round((timeS[i]! - originS) * microseconds) / microseconds
}
