import type { LineFormatChoice } from '#contract/bench/source.ts'
import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { ForceScale, ReadingUnit, Tare } from '#contract/calibration/forceScale.ts'
import { Trouble } from '#contract/errors.ts'
import type { DeviceTimeUnit } from '#domain/signal/stream/time/deviceTime.ts'
import { createSampleClock } from '#domain/signal/stream/time/sampleClock.ts'
import type { CaptureListener } from './captureEvents.ts'
import { createCaptureWatch } from './captureWatch.ts'
import type { Clock } from './clock.ts'
import { createForceBatch } from './forceBatch.ts'
import { createFrameGatherer } from './frameGatherer.ts'
import { createLineParser } from './lineFormats/lineParser.ts'
import { createReadingBatch } from './readingBatch.ts'
import { createRejectedLines } from './rejectedLines.ts'
import { createSignalTeller } from './signalTeller.ts'
import { createStreamScale } from './streamScale.ts'
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

/**
 * bytes -> lines -> times -> force -> detector. The samples of a capture are handed on as received, with their times in
 * whole microseconds since its first; force is only what the detector and the page see.
 */
export function startCaptureSession(options: CaptureSessionOptions): RunningSession {
  const { clock, lineFormat, settings, armed, listener } = options
  const rejected = createRejectedLines()
  const batch = createReadingBatch()
  const parser = createLineParser(lineFormat, batch, rejected.add)
  const sampleClock = createSampleClock(timeUnitOf(lineFormat), listener.gap, listener.restarted)
  const frames = createFrameGatherer()
  const forces = createForceBatch()
  const scale = createStreamScale(options.scaleFor)
  const zero = createZero(clock, {
    endCodes: settings.endCodes,
    capacityN: () => (scale.hasForce() ? settings.capacityN : null),
  })
  const watch = createCaptureWatch({ clock, settings, armed, scale, zero, listener })
  const teller = createSignalTeller({ sampleClock, watch, zero, rejected }, listener)
  let stopped = false

  function takeBatch(arrivalS: number): void {
    const { deviceTimeUs, sequence, timeS: times } = batch
    if (sampleClock.stamp(deviceTimeUs, sequence, batch.count, arrivalS, times) > 0) batch.dropUntimed()
    const { count, values, timeS } = batch
    const { timeUs, force, tared } = forces.fill(batch, scale.toForce(), zero.tare()?.offset ?? 0)
    zero.take(timeS, force, values, 0, count)
    if (listener.reading !== undefined) for (let i = 0; i < count; i++) listener.reading(timeS[i]!, values[i]!)
    frames.add(timeS, tared, 0, count)
    watch.take(timeUs, timeS, tared, values, count)
    batch.clear()
  }

  function beginUnit(unit: ReadingUnit): void {
    if (scale.unit() !== null) {
      // Newtons of another unit have another zero, and no capture has two units.
      cut()
      frames.clear()
      watch.resume()
      zero.forget()
    }
    const hadForce = scale.hasForce()
    scale.begin(unit)
    if (scale.hasForce() !== hadForce) watch.scaleChanged()
  }

  /** Ends what runs because the stream ends here. */
  function cut(): void {
    watch.cutShort()
    teller.tell(clock.nowS(), true)
  }

  function adopt(tare: Tare): void {
    // What was gathered has the zero before.
    frames.clear()
    listener.tared(tare)
    watch.learn(tare)
  }

  return {
    bytes(chunk, arrivalS) {
      if (stopped) return
      for (let from = 0; from < chunk.length; ) {
        from += parser.push(from === 0 ? chunk : chunk.subarray(from))
        const sent = parser.unit()
        if (sent !== null && sent !== scale.unit()) beginUnit(sent)
        takeBatch(arrivalS)
      }
      const nowS = clock.nowS()
      if (teller.isDue(nowS)) {
        const due = watch.capturing() ? null : zero.tareIfDue(watch.atRest().startThreshold)
        if (due !== null) adopt(due)
        teller.tell(nowS)
        frames.noise(watch.atRest().noise)
      }
      const frame = frames.take(nowS, scale.hasForce() ? 'N' : 'counts', watch.runningPeak())
      if (frame !== null) listener.frame(frame)
    },
    interrupted() {
      if (!stopped) cut()
    },
    resumed() {
      parser.restart()
      sampleClock.interrupted()
      zero.restart()
      frames.clear()
      watch.resume()
    },
    takeTare() {
      if (watch.capturing())
        throw new Trouble('not-stable', 'The zero cannot be taken while a break is recorded.', waitForLoadOff)
      adopt(zero.tareNow())
    },
    arm: watch.arm,
    readingUnit: scale.unit,
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
