import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { Tare } from '#contract/calibration/forceScale.ts'
import { settingsWithoutForce, withoutForce } from '#domain/calibration/scale/forceScale.ts'
import { createBreakDetector } from '#domain/signal/loading/breakDetector.ts'
import type { CaptureStart } from '#domain/signal/loading/captureStart.ts'
import type { CaptureListener } from './captureEvents.ts'
import type { Clock } from './clock.ts'
import { createStreamCapture } from './streamCapture.ts'
import type { StreamScale } from './streamScale.ts'
import type { Zero } from './zero.ts'

/** Looks for loadings in the samples of a stream, and makes captures of them. */
export type CaptureWatch = {
  /** Times in µs and in s, force after tare and readings of so many samples. */
  take(timeUs: Float64Array, timeS: Float64Array, tared: Float64Array, readings: Float64Array, count: number): void
  /** Ends a capture that runs as it stands: the stream ends here. */
  cutShort(): void
  /** The stream goes on at another time. */
  resume(): void
  /** The zero is another one. */
  learn(tare: Tare): void
  /** There is a scale now, or none any more; a capture that runs goes on as it began. */
  scaleChanged(): void
  /** Disarming lets a running capture come to its end first. */
  arm(armed: boolean): void
  capturing(): boolean
  runningPeak(): number | null
  atRest(): { noise: number | null; startThreshold: number | null }
}

export type CaptureWatchParts = {
  clock: Clock
  settings: DetectionSettings
  armed: boolean
  scale: StreamScale
  zero: Pick<Zero, 'tare' | 'dueAfterCapture'>
  listener: Pick<CaptureListener, 'begin' | 'samples' | 'end'>
}

/** After a new zero the detector learns rest from so much of what it has already seen, s. */
const relearnS = 1

/** No capture runs. */
export function createCaptureWatch(parts: CaptureWatchParts): CaptureWatch {
  const { settings, scale, zero, listener } = parts
  const capture = createStreamCapture(parts.clock, settings, listener)
  let { armed } = parts
  const told: { start: CaptureStart | null; result: EvaluationResult | null } = { start: null, result: null }
  const newDetector = (under: DetectionSettings) =>
    createBreakDetector(under, {
      begin(start) {
        told.start = start
      },
      end(result) {
        told.result = result
      },
    })
  let detector = newDetector(settings)

  function actOnTold(): void {
    const { start, result } = told
    told.start = null
    told.result = null
    if (start !== null) capture.begin(start, scale.unit() ?? 'counts')
    if (result === null) return
    zero.dueAfterCapture()
    capture.end(scale.hasForce() ? result : withoutForce(result))
  }

  function take(
    timeUs: Float64Array,
    timeS: Float64Array,
    tared: Float64Array,
    readings: Float64Array,
    count: number,
  ): void {
    for (let from = 0; from < count; ) {
      const watched = zero.tare() !== null && (armed || capture.running())
      // The detector stops where a capture begins or ends; what it has told is acted on when its samples are in the history.
      const to = watched ? detector.take(timeS, tared, readings, from, count) : count
      capture.append(timeUs, readings, from, to)
      actOnTold()
      from = to
    }
  }

  return {
    take,
    cutShort() {
      capture.cutShort()
      detector.finish()
      actOnTold()
    },
    resume() {
      capture.clear()
      detector.finish()
      actOnTold()
    },
    learn({ offset }) {
      detector.reset()
      // What was steady a moment ago is rest under the new zero too, so a load that comes at once keeps its toe. It is played
      // as if it came now: a load may stand among it, whose capture begins and ends there.
      const { timeUs, readings } = capture.newest(relearnS)
      const toForce = scale.toForce()
      const timeS = timeUs.map((us) => us / 1e6)
      const tared = readings.map((reading) => toForce(reading) - offset)
      capture.clear()
      take(timeUs, timeS, tared, readings, timeUs.length)
    },
    scaleChanged() {
      if (!capture.running()) detector = newDetector(scale.hasForce() ? settings : settingsWithoutForce(settings))
    },
    arm(next) {
      if (armed === next) return
      armed = next
      if (!capture.running()) detector.reset()
    },
    capturing: capture.running,
    runningPeak: () => detector.runningPeak(),
    atRest: () => detector.atRest(),
  }
}
