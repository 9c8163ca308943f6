import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { ReadingUnit } from '#contract/calibration/forceScale.ts'
import { type CaptureStart, leastPreTriggerSamples, longestPreTriggerS } from '#domain/signal/loading/captureStart.ts'
import { createSampleHistory } from '#domain/signal/stream/sampleHistory.ts'
import { type BlockWriter, createBlockWriter } from './blockWriter.ts'
import type { CaptureListener } from './captureEvents.ts'
import type { Clock } from './clock.ts'

/** The samples of a stream as they were received: the newest are kept, and those of a capture handed on. */
export type StreamCapture = {
  /** Times in whole microseconds of the stream, and readings, from index `from` to before `to`. */
  append(timeUs: Float64Array, readings: Float64Array, from: number, to: number): void
  /** A load was noticed: its first samples were kept for this. */
  begin(start: CaptureStart, unit: ReadingUnit): void
  end(result: EvaluationResult): void
  /** What runs ends because the stream ends here. */
  cutShort(): void
  running(): boolean
  /** Times and readings of the newest so many seconds. */
  newest(seconds: number): { timeUs: Float64Array; readings: Float64Array }
  /** What was kept is of another stretch of time. */
  clear(): void
}

/** No capture runs. */
export function createStreamCapture(
  clock: Clock,
  settings: DetectionSettings,
  listener: Pick<CaptureListener, 'begin' | 'samples' | 'end'>,
): StreamCapture {
  // No less than the detector keeps, which begins a capture so many samples ago.
  const history = createSampleHistory(2, (longestPreTriggerS(settings) + 1) * 1e6, leastPreTriggerSamples)
  let capture: { writer: BlockWriter; firstUs: number } | null = null
  let ending: 'complete' | 'interrupted' = 'complete'
  return {
    append(timeUs, readings, from, to) {
      history.append([timeUs, readings], from, to)
      capture?.writer.add(timeUs, capture.firstUs, readings, from, to)
    },
    begin(start, unit) {
      const writer = createBlockWriter(clock, (block) => listener.samples(block))
      const [timeUs, readings] = history.copyFrom(Math.max(0, history.length() - start.samples))
      const firstUs = timeUs![0]!
      capture = { writer, firstUs }
      ending = 'complete'
      listener.begin({
        startedAt: clock.instant(),
        streamTimeS: start.firstTimeS,
        readingUnit: unit,
        // The rated load stays known for the day on which there is a scale.
        settings: { ...start.settings, capacityN: settings.capacityN },
      })
      writer.add(timeUs!, firstUs, readings!, 0, timeUs!.length)
    },
    end(result) {
      capture?.writer.flush()
      capture = null
      listener.end(result, ending)
    },
    cutShort() {
      ending = 'interrupted'
    },
    running: () => capture !== null,
    newest(seconds) {
      const [timeUs, readings] = history.copyNewest(seconds * 1e6)
      return { timeUs: timeUs!, readings: readings! }
    },
    clear: history.clear,
  }
}
