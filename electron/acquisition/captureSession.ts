import type { LineFormatChoice } from '#contract/bench/source.ts'
import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { ForceScale, ReadingUnit, Tare } from '#contract/calibration/forceScale.ts'
import { Trouble } from '#contract/errors.ts'
import { forceOfReading, settingsWithoutForce, withoutForce } from '#domain/calibration/scale/forceScale.ts'
import { createBreakDetector } from '#domain/signal/loading/breakDetector.ts'
import { type CaptureStart, longestPreTriggerS } from '#domain/signal/loading/captureStart.ts'
import { createSampleHistory } from '#domain/signal/stream/sampleHistory.ts'
import type { DeviceTimeUnit } from '#domain/signal/stream/time/deviceTime.ts'
import { createSampleClock } from '#domain/signal/stream/time/sampleClock.ts'
import { type BlockWriter, createBlockWriter } from './blockWriter.ts'
import type { CaptureListener } from './captureEvents.ts'
import type { Clock } from './clock.ts'
import { createForceBatch } from './forceBatch.ts'
import { createFrameGatherer } from './frameGatherer.ts'
import { createLineParser } from './lineFormats/lineParser.ts'
import { createReadingBatch } from './readingBatch.ts'
import { createRejectedLines } from './rejectedLines.ts'
import { createZero } from './zero.ts'

/** What to do about a capture that runs. */
export const waitForLoadOff = 'Wait until the load is off again.'

export type CaptureSessionOptions = {
  clock: Clock
  lineFormat: LineFormatChoice
  /** The scale for what the device turns out to send. */
  scaleFor(unit: ReadingUnit): ForceScale
  settings: DetectionSettings
  armed: boolean
  listener: CaptureListener
}

/** One stream from its first byte on: what the engine may ask of it. */
export type RunningSession = {
  bytes(chunk: Uint8Array, arrivalS: number): void
  /** The device went away: a running capture ends as it stands. The zero is kept. */
  interrupted(): void
  /** The device is back. */
  resumed(): void
  /** Throws Trouble `not-stable` with the reason. */
  takeTare(): void
  /** Disarming lets a running capture come to its end first. */
  arm(armed: boolean): void
  /** null before the first reading. */
  readingUnit(): ReadingUnit | null
  tare(): Tare | null
  /** Ends a running capture as interrupted; nothing is told after that. */
  stop(): void
}

/** The state of the signal is told so often, s. */
const tellEveryS = 0.1
/** Rejected lines are told, and kept, so often, s: a device that sends nothing else must not fill the archive with them. */
const tellRejectedEveryS = 1
/** After a new zero the detector learns rest from so much of what it has already seen, s. */
const relearnS = 1

type Capture = { writer: BlockWriter; firstUs: number }

/**
 * bytes -> lines -> times -> force -> detector. The samples of a capture are handed on as received, with their times in
 * whole microseconds since its first; force is only what the detector and the page see.
 */
export function startCaptureSession(options: CaptureSessionOptions): RunningSession {
  const { clock, lineFormat, settings, listener } = options
  const rejected = createRejectedLines()
  const batch = createReadingBatch()
  const parser = createLineParser(lineFormat, batch, rejected.add)
  const sampleClock = createSampleClock(timeUnitOf(lineFormat), listener.gap)
  /** Times in µs and readings: what a capture begins with, and what a new zero is learnt from. */
  const history = createSampleHistory(2, (longestPreTriggerS(settings) + 1) * 1e6)
  const frames = createFrameGatherer()
  const zero = createZero(clock)
  const forces = createForceBatch()
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

  let { armed } = options
  let stopped = false
  let unit: ReadingUnit | null = null
  /** Until a reading has shown its unit nothing is detected. */
  let hasScale = true
  let toForce = (reading: number) => reading
  let capture: Capture | null = null
  let ending: 'complete' | 'interrupted' = 'complete'
  let toldAtS = Number.NEGATIVE_INFINITY
  let toldRejectedAtS = Number.NEGATIVE_INFINITY

  function takeBatch(arrivalS: number): void {
    const { deviceTimeUs, sequence, timeS: times } = batch
    if (sampleClock.stamp(deviceTimeUs, sequence, batch.count, arrivalS, times) > 0) batch.dropUntimed()
    const { count, values, timeS } = batch
    const { timeUs, force, tared } = forces.fill(batch, toForce, zero.tare()?.offset ?? 0)
    zero.take(timeS, force, 0, count)
    if (listener.reading !== undefined) for (let i = 0; i < count; i++) listener.reading(timeS[i]!, values[i]!)
    frames.add(timeS, tared, 0, count)
    for (let from = 0; from < count; ) {
      const watched = zero.tare() !== null && (armed || capture !== null)
      // The detector stops where a capture begins or ends; what it has told is acted on when its samples are in the history.
      const to = watched ? detector.take(timeS, tared, values, from, count) : count
      history.append([timeUs, values], from, to)
      capture?.writer.add(timeUs, capture.firstUs, values, from, to)
      actOnTold()
      from = to
    }
    batch.clear()
  }

  function actOnTold(): void {
    const { start, result } = told
    told.start = null
    told.result = null
    if (start !== null) begin(start)
    if (result !== null) end(result)
  }

  function beginUnit(next: ReadingUnit): void {
    // Newtons of another unit have another zero.
    if (unit !== null && unit !== next) zero.forget()
    unit = next
    const scaled = forceOfReading(options.scaleFor(next), next)
    const hadScale = hasScale
    hasScale = scaled !== null
    if (hasScale !== hadScale && capture === null)
      detector = newDetector(hasScale ? settings : settingsWithoutForce(settings))
    toForce = scaled ?? ((reading) => reading)
  }

  /** The detector has noticed a load: its first samples were kept for this. */
  function begin(start: CaptureStart): void {
    const writer = createBlockWriter(clock, (block) => listener.samples(block))
    const [timeUs, readings] = history.copyFrom(Math.max(0, history.length() - start.samples))
    const firstUs = timeUs![0]!
    capture = { writer, firstUs }
    ending = 'complete'
    listener.begin({
      startedAt: clock.instant(),
      streamTimeS: start.firstTimeS,
      readingUnit: unit ?? 'counts',
      // The rated load stays known for the day on which there is a scale.
      settings: { ...start.settings, capacityN: settings.capacityN },
    })
    writer.add(timeUs!, firstUs, readings!, 0, timeUs!.length)
  }

  function end(result: EvaluationResult): void {
    capture?.writer.flush()
    capture = null
    zero.dueAfterCapture()
    listener.end(hasScale ? result : withoutForce(result), ending)
  }

  /** Ends what runs because the stream ends here. */
  function cut(): void {
    ending = 'interrupted'
    detector.finish()
    actOnTold()
    tell(clock.nowS(), true)
  }

  function adopt(tare: Tare): void {
    detector.reset()
    listener.tared(tare)
    if (!armed) return
    // What was steady a moment ago is rest under the new zero too, so a load that comes at once keeps its toe.
    const [timeUs, readings] = history.copyNewest(relearnS * 1e6)
    const timeS = timeUs!.map((us) => us / 1e6)
    const tared = readings!.map((reading) => toForce(reading) - tare.offset)
    for (let from = 0; from < timeS.length; ) from = detector.take(timeS, tared, readings!, from, timeS.length)
    actOnTold()
  }

  function tell(nowS: number, allRejected = false): void {
    toldAtS = nowS
    if (allRejected || nowS - toldRejectedAtS >= tellRejectedEveryS) {
      toldRejectedAtS = nowS
      rejected.tell(listener.rejected)
    }
    const { noise, startThreshold } = detector.atRest()
    const steadiness = zero.judge()
    const { sampleRateHz, jitterS, clock: kind, missingSamples } = sampleClock.state()
    listener.signal({
      sampleRateHz,
      jitterS,
      clock: kind,
      missingSamples,
      rejectedLines: rejected.count(),
      rejectedExample: rejected.example(),
      noise: noise ?? steadiness.sd,
      startThreshold,
      unstableBecause: capture === null ? steadiness.unsteadyBecause : 'a capture is running',
    })
  }

  return {
    bytes(chunk, arrivalS) {
      if (stopped) return
      parser.push(chunk)
      const sent = parser.unit()
      if (sent !== null && sent !== unit) beginUnit(sent)
      takeBatch(arrivalS)
      const nowS = clock.nowS()
      if (nowS - toldAtS >= tellEveryS) {
        const due = capture === null ? zero.tareIfDue(detector.atRest().startThreshold) : null
        if (due !== null) adopt(due)
        tell(nowS)
      }
      const frame = frames.take(nowS, hasScale ? 'N' : 'counts', detector.runningPeak())
      if (frame !== null) listener.frame(frame)
    },
    interrupted() {
      if (!stopped) cut()
    },
    resumed() {
      parser.restart()
      sampleClock.interrupted()
      zero.restart()
      history.clear()
      frames.clear()
      detector.finish()
      actOnTold()
    },
    takeTare() {
      if (capture !== null)
        throw new Trouble('not-stable', 'The zero cannot be taken while a capture runs.', waitForLoadOff)
      adopt(zero.tareNow())
    },
    arm(next) {
      if (armed === next) return
      armed = next
      if (capture === null) detector.reset()
    },
    readingUnit: () => unit,
    tare: zero.tare,
    stop() {
      if (stopped) return
      cut()
      stopped = true
    },
  }
}

/** The unit of the device's time column, where there is one. */
function timeUnitOf({ columns }: LineFormatChoice): DeviceTimeUnit {
  if (columns.includes('time_ms')) return 'ms'
  return columns.includes('time_s') ? 's' : 'us'
}
