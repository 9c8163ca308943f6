import type { CaptureListener } from '#acquisition/captureEvents.ts'
import type { Clock } from '#acquisition/clock.ts'
import type { Archive } from '#archive/archive.ts'
import type { BreakSummary } from '#contract/breaks/break.ts'
import type { BreakEnd } from '#contract/breaks/capture.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import type { ForceScale, Tare } from '#contract/calibration/forceScale.ts'
import { troubleFrom } from '#contract/errors.ts'
import type { Emit } from '#contract/events.ts'
import { storedEvaluation, type VerifiedRange } from '#domain/signal/loading/storedEvaluation.ts'
import type { Outbox } from '../../core/outbox.ts'
import { type CaptureLogEntry, capturedEntry } from './captureLog.ts'
import type { SpecimenQueue } from './specimenQueue.ts'
import { createWaitingBlocks, type WaitingBlocks } from './waitingBlocks.ts'

export type CaptureRecorderParts = {
  archive: Archive
  clock: Clock
  outbox: Outbox
  queue: SpecimenQueue
  emit: Emit
  log(entry: CaptureLogEntry): void
  /** The number of the connection's session, once it is stored. */
  sessionId(): number
  /** Called when a stored break's number becomes known and when its summary is there. `isNewest`: no capture began after it. */
  onStored(breakId: number, summary: BreakSummary | null, isNewest: boolean): void
}

/** Brings a capture to the archive while it runs, and tells of it when it is stored. */
export type CaptureRecorder = {
  begin(
    start: Parameters<CaptureListener['begin']>[0],
    scale: ForceScale,
    tare: Tare | null,
    verifiedRangeN: VerifiedRange,
  ): void
  samples(block: SampleBlock): void
  end: CaptureListener['end']
}

/** A recorder behind the outbox of one archive; captures follow one another. */
export function createCaptureRecorder(parts: CaptureRecorderParts): CaptureRecorder {
  const { archive, clock, outbox, queue, emit, log } = parts
  type Capture = {
    header: { settings: Parameters<CaptureListener['begin']>[0]['settings']; scale: ForceScale; tare: Tare | null }
    verifiedRangeN: VerifiedRange
    breakId: number
    /** The one in the press when the load began. */
    specimen: Promise<number | null>
    waiting: WaitingBlocks
  }
  let running: Capture | null = null
  let newest: Capture | null = null

  /** Never rejects: a load that comes is captured, whatever keeps the list of specimens from being read. */
  async function specimenInPress(): Promise<number | null> {
    try {
      return await queue.forCapture()
    } catch (thrown) {
      const atHand = queue.current()
      const { code, message } = troubleFrom(thrown)
      emit('trouble', {
        code,
        message: `${message} The break that is being recorded is kept ${atHand === null ? 'without a specimen' : `for specimen ${atHand.fields.number}`}.`,
        hint: 'Open the break when it is stored, and give it to another specimen if that is wrong.',
      })
      return atHand?.specimenId ?? null
    }
  }

  return {
    begin({ startedAt, streamTimeS, readingUnit, settings }, scale, tare, verifiedRangeN) {
      const header = { settings, scale, tare }
      const waiting = createWaitingBlocks(
        (block) => archive.appendSamples(capture.breakId, block),
        () => outbox.put(waiting.store, capture),
      )
      // The specimen is asked for now, not when the disk is ready: the one in the press at this moment is loaded.
      const capture: Capture = { header, verifiedRangeN, breakId: 0, specimen: specimenInPress(), waiting }
      running = capture
      newest = capture
      outbox.put(async () => {
        const stored = await archive.beginBreak({
          sessionId: parts.sessionId(),
          specimenId: await capture.specimen,
          startedAt,
          readingUnit,
          ...header,
        })
        capture.breakId = stored.breakId
        log({ event: 'loading', timeS: streamTimeS, breakId: stored.breakId })
        parts.onStored(stored.breakId, null, capture === newest)
      }, capture)
    },

    samples(block) {
      const capture = running
      if (capture === null) throw new TypeError('samples requires a capture that has begun')
      capture.waiting.add(block)
    },

    end(result, ending) {
      const capture = running
      if (capture === null) throw new TypeError('end requires a capture that has begun')
      running = null
      if (result.outcome === 'break') queue.broke(capture.specimen)
      const endedAt = clock.instant()
      const evaluation = storedEvaluation(capture.header, result, ending, endedAt, capture.verifiedRangeN)
      let end: BreakEnd | null = null
      outbox.put(async () => {
        end = await archive.finishBreak(capture.breakId, endedAt, ending, result.missingSamples, evaluation)
      }, capture)
      // A write of its own, so that trouble in reading back does not finish the break twice.
      outbox.put(async () => {
        const { summary } = await archive.break(capture.breakId)
        const specimenId = await capture.specimen
        if (result.outcome === 'break' && specimenId !== null) await queue.spent(specimenId)
        parts.onStored(capture.breakId, summary, capture === newest)
        log(capturedEntry(end!, evaluation.result, summary.verification))
      }, capture)
    },
  }
}
