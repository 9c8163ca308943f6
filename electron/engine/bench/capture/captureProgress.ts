import type { Archive } from '#archive/archive.ts'
import type { LiveFrame } from '#contract/bench/bench.ts'
import type { BreakSummary } from '#contract/breaks/break.ts'

/** The capture that runs, and the one before it, as the bench shows them. */
export type CaptureProgress = {
  begin(): void
  frame(frame: Pick<LiveFrame, 'peak'>): void
  /** The capture is over; its highest load, N, where there is a force. */
  ended(peakN: number | null): void
  /** A break's number is known, or with its summary: it is over and stored. `isNewest`: no capture began after it. */
  stored(breakId: number, summary: BreakSummary | null, isNewest: boolean): void
  /** Another device, or none: what ran there is over. */
  forgetPeak(): void
  /** Reads again after records changed. */
  refresh(): Promise<void>
  runningPeak(): number | null
  captureBreakId(): number | null
  /** The newest capture's break, once it is stored. */
  outcomeBreakId(): number | null
  lastBreak(): BreakSummary | null
}

/** Nothing captured yet. */
export function createCaptureProgress(archive: Pick<Archive, 'break'>, capturing: () => boolean): CaptureProgress {
  let runningPeak: number | null = null
  let captureBreakId: number | null = null
  let outcomeBreakId: number | null = null
  let lastBreak: BreakSummary | null = null
  return {
    begin() {
      runningPeak = null
      outcomeBreakId = null
    },
    frame({ peak }) {
      if (capturing()) runningPeak = peak
    },
    ended(peakN) {
      runningPeak = peakN ?? runningPeak
    },
    stored(breakId, summary, isNewest) {
      if (summary === null) captureBreakId = capturing() ? breakId : null
      else {
        lastBreak = summary
        if (isNewest) outcomeBreakId = breakId
        if (captureBreakId === breakId) captureBreakId = null
      }
    },
    forgetPeak() {
      runningPeak = null
    },
    async refresh() {
      const asked = lastBreak
      if (asked === null) return
      const { summary } = await archive.break(asked.breakId)
      // A break that was stored meanwhile is the last one now
      if (lastBreak === asked) lastBreak = summary
    },
    runningPeak: () => runningPeak,
    captureBreakId: () => captureBreakId,
    outcomeBreakId: () => outcomeBreakId,
    lastBreak: () => lastBreak,
  }
}
