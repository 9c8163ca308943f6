import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { createReleaseWatch, type ReleaseWatch } from '../rest/releaseWatch.ts'
import { createReturnWatch } from '../rest/returnWatch.ts'
import { createSampleHistory } from '../stream/sampleHistory.ts'
import { createSignalFront, type FrontListener, type SignalFront } from '../stream/signalFront.ts'
import { type CaptureStart, leastPreTriggerSamples, longestPreTriggerS, startCapture } from './captureStart.ts'
import type { CurveEvaluator } from './curveEvaluator.ts'
import { createRunningCapture, type RunningCapture } from './runningCapture.ts'

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

/** The front is stopped where a loading starts: the evaluator of the capture looks at glitches and gaps itself. */
const restOnly: Omit<FrontListener, 'starts'> = {
  rest() {},
  loaded: (_timeS, _force, _reading, from) => from,
  glitch() {},
  gap() {},
}

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
  let told = false
  let release: ReleaseWatch | null = null
  let capture: RunningCapture | null = null

  function createFront(): SignalFront {
    const watching = createSignalFront(settings, {
      ...restOnly,
      starts() {
        starts = true
        watching.stop()
      },
    })
    return watching
  }

  function take(timeS: Float64Array, force: Float64Array, reading: Float64Array, from: number, to: number): number {
    told = false
    let i = from
    while (i < to && !told)
      if (capture === null) i = takeRest(timeS, force, reading, i, to)
      else {
        i = capture.take(timeS, force, reading, i, to)
        if (capture.over()) end(capture)
      }
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
    const { start, evaluator } = startCapture(history, front.watch, settings)
    capture = createRunningCapture(evaluator, start.firstTimeS, timeS, front.watch.sigma())
    starts = false
    told = true
    listener.begin(start)
    if (evaluator.over()) end(capture)
  }

  function end({ evaluator, noise }: RunningCapture): void {
    told = true
    const result = evaluator.result()
    capture = null
    forget()
    if (result.outcome === 'break' && result.peakN !== null) release = releaseAfter(evaluator, result.peakN, noise)
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

/** Waits until the load of a break is gone, or stands still. */
function releaseAfter(evaluator: CurveEvaluator, peak: number, noise: number): ReleaseWatch {
  return createReleaseWatch({ zero: evaluator.zero(), peak, threshold: evaluator.threshold(), noise })
}
