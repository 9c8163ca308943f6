import type { BreakEnd } from '#contract/breaks/capture.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import type { Verification } from '#contract/calibration/verification.ts'

type Captured = {
  breakId: number
  /** null: no calibration was in force. */
  calibrationId: number | null
} & Pick<Verification, 'timesVerified' | 'expandedUncertaintyN'> &
  Pick<
    EvaluationResult,
    | 'peakN'
    | 'peakTimeS'
    | 'samples'
    | 'missingSamples'
    | 'sampleRateHz'
    | 'loadingRateNPerS'
    | 'samplingBoundN'
    | 'samplingBoundPercent'
    | 'flags'
  >

/** What happens on the bench, one entry after the other, as unattended capture reports it. Times in seconds of the stream. */
export type CaptureLogEntry =
  | { event: 'connected'; path: string; lineFormat: string }
  | { event: 'tared'; offset: number; sd: number }
  | { event: 'loading'; timeS: number; breakId: number }
  | ({ event: 'break' } & Captured)
  | ({ event: 'unloading' } & Captured)
  | { event: 'gap'; timeS: number; missing: number }
  | { event: 'restarted'; timeS: number }
  | { event: 'disconnected' }
  | { event: 'reconnected' }
  | { event: 'rejected-line'; count: number; example: string }

/** The entry of a capture that is over and stored. Whatever did not break was let go again. */
export function capturedEntry(
  end: Pick<BreakEnd, 'breakId' | 'samples'>,
  result: EvaluationResult,
  verification: Verification | null,
): CaptureLogEntry {
  return {
    event: result.outcome === 'break' ? 'break' : 'unloading',
    breakId: end.breakId,
    peakN: result.peakN,
    peakTimeS: result.peakTimeS,
    samples: end.samples,
    missingSamples: result.missingSamples,
    sampleRateHz: result.sampleRateHz,
    loadingRateNPerS: result.loadingRateNPerS,
    samplingBoundN: result.samplingBoundN,
    samplingBoundPercent: result.samplingBoundPercent,
    flags: result.flags,
    calibrationId: verification?.calibrationId ?? null,
    timesVerified: verification?.timesVerified ?? null,
    expandedUncertaintyN: verification?.expandedUncertaintyN ?? null,
  }
}
