import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { firstWhere } from '../../numbers/risingSearch.ts'
import { createReleaseWatch, type ReleaseWatch } from '../rest/releaseWatch.ts'
import { createReturnWatch } from '../rest/returnWatch.ts'
import { createSampleHistory } from '../stream/sampleHistory.ts'
import { createSignalFront, type SignalFront } from '../stream/signalFront.ts'
import {
  type CaptureStart,
  leastPreTriggerSamples,
  longestPreTriggerS,
  sinceOrigin,
  startCapture,
} from './captureStart.ts'
import type { CurveEvaluator } from './curveEvaluator.ts'

/** What the detector tells. Both are called from within `take` or `finish`. */
export type DetectorListener = {
  begin(start: CaptureStart): void
  /** The newest sample taken is the last of the capture. Times in the result count from the capture's first sample. */
  end(result: EvaluationResult): void
}

/** Finds breaks in an endless stream, in bounded memory. */
export type BreakDetector = {
  /**
   * Takes the samples of arrays from index `from` until a capture begins or ends, or up to `to`; returns the index after
   * the newest one taken. Stream times in whole microseconds that rise strictly, force after tare, readings for the end
   * codes. The answers are the same however the stream is cut.
   */
  take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number
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

/** A capture in which the evaluation sees no load after this time, s, is given up. */
const giveUpS = 10

/** A running capture: `noise` SD before it, `noticedS` stream time at which it was noticed. */
type Capture = { evaluator: CurveEvaluator; originS: number; noticedS: number; noise: number }

/**
 * The live detector: watches the signal at rest, begins a capture `preTriggerS` before the onset when loading starts,
 * feeds it to the machine that also evaluates stored curves, and waits after a break until the load is gone.
 * Evaluating the captured samples with the recorded settings gives the same result.
 *
 * Checked: tests/domain/signal/loading/breakDetector.spec.ts, tests/reference/corpus.spec.ts, tests/soak/detector.spec.ts.
 */
export function createBreakDetector(settings: DetectionSettings, listener: DetectorListener): BreakDetector {
  const history = createSampleHistory(3, longestPreTriggerS(settings), leastPreTriggerSamples)
  const returns = createReturnWatch()
  let front = createFront()
  let starts = false
  let told = 0
  let release: ReleaseWatch | null = null
  let capture: Capture | null = null
  let relativeS = new Float64Array(1024)

  function createFront(): SignalFront {
    const watching = createSignalFront(settings, {
      rest() {},
      starts() {
        starts = true
        watching.stop()
      },
      loaded: (_timeS, _force, _reading, from) => from,
      glitch() {},
      gap() {},
    })
    return watching
  }

  function take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number {
    const toldBefore = told
    let i = from
    while (i < to && told === toldBefore)
      i = capture === null ? takeRest(timeS, force, reading, i, to) : takeCapture(capture, timeS, force, reading, i, to)
    return i
  }

  function takeRest(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number {
    const columns = [timeS, force, reading]
    const released = release === null ? from : release.take(timeS, force, from, to)
    history.append(columns, from, released)
    if (released === to) return to
    if (release !== null) watchAfresh()
    const next = front.take(timeS, force, reading, released, to)
    history.append(columns, released, next)
    if (starts) noticeLoading(timeS[next - 1]!, force[next - 1]!)
    return next
  }

  /** The bench is at another level. The samples since then are too few to rest on: the front begins with the newest. */
  function watchAfresh(): void {
    release = null
    front = createFront()
    starts = false
  }

  function noticeLoading(timeS: number, force: number): void {
    if (returns.isReturn(force, front.watch)) {
      watchAfresh()
      return
    }
    const noise = front.watch.sigma()
    const { start, evaluator } = startCapture(history, front.watch, settings)
    capture = { evaluator, originS: start.firstTimeS, noticedS: timeS, noise }
    starts = false
    told += 1
    listener.begin(start)
    if (evaluator.over()) end(capture)
  }

  function takeCapture(
    running: Capture,
    timeS: Float64Array,
    force: Float64Array,
    reading: Float64Array,
    from: number,
    to: number,
  ): number {
    const { evaluator, originS, noticedS } = running
    const isLate = (i: number) => timeS[i]! - noticedS > giveUpS
    const until = evaluator.loading() ? to : Math.min(to, firstWhere(from, to, isLate) + 1)
    if (relativeS.length < until) relativeS = new Float64Array(2 * until)
    sinceOrigin(originS, timeS, from, until, relativeS)
    const next = evaluator.take(relativeS, force, reading, from, until)
    const givenUp = !evaluator.over() && !evaluator.loading() && isLate(next - 1)
    if (givenUp) evaluator.finish()
    if (givenUp || evaluator.over()) end(running)
    return next
  }

  function end({ evaluator, noise }: Capture): void {
    told += 1
    const result = evaluator.result()
    capture = null
    forget()
    if (result.outcome === 'break' && result.peakN !== null)
      release = createReleaseWatch({
        zero: evaluator.zero(),
        peak: result.peakN,
        threshold: evaluator.threshold(),
        noise,
      })
    listener.end(result)
  }

  function forget(): void {
    history.clear()
    watchAfresh()
    returns.forget()
  }

  return {
    take,
    finish() {
      if (capture !== null) {
        capture.evaluator.finish()
        end(capture)
      }
      forget()
    },
    reset() {
      if (capture !== null) throw new TypeError('reset requires that no capture runs')
      forget()
    },
    capturing: () => capture !== null,
    runningPeak: () => capture?.evaluator.runningPeak() ?? null,
    atRest() {
      const threshold = front.watch.threshold()
      return { noise: front.watch.noise(), startThreshold: threshold > 0 ? threshold : null }
    },
  }
}
