import type { LiveFrame, SignalState } from '#contract/bench/bench.ts'
import type { Ending } from '#contract/breaks/capture.ts'
import type { SampleBlock } from '#contract/breaks/curve.ts'
import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { ReadingUnit, Tare } from '#contract/calibration/forceScale.ts'

/** What the capture session tells the engine, in the order in which it happens. Called on the acquisition thread; must not block. */
export type CaptureListener = {
  /** Signal health or tare changed (at most ten times a second). */
  signal(state: SignalState): void
  /** The zero was taken: by hand or by the session itself when it became steady. */
  tared(tare: Tare): void
  /** Loading began. The first block, with the pre-trigger samples, follows. */
  begin(start: { startedAt: string; streamTimeS: number; readingUnit: ReadingUnit; settings: DetectionSettings }): void
  /** At least every 50 ms of real time while samples come and a capture runs. */
  samples(block: SampleBlock): void
  /** The capture is over; `result` is the detector's, equal to what evaluating the stored curve gives. */
  end(result: EvaluationResult, ending: Exclude<Ending, 'recovered'>): void
  /** About 30 times a second while samples arrive. */
  frame(frame: LiveFrame): void
  /** Missing samples were noticed, at stream time. */
  gap(streamTimeS: number, missing: number): void
  /** The device has restarted, at stream time: what it would have sent meanwhile is not missing. */
  restarted(streamTimeS: number): void
  /** Every sample as received, when somebody wants them: a calibration reads these. */
  reading?(streamTimeS: number, reading: number): void
  /** Lines that are no reading: how many since the last call, and the newest of them. */
  rejected(count: number, example: Uint8Array): void
}
