import type { ByteSource } from '#acquisition/byteSource.ts'
import type { CaptureListener } from '#acquisition/captureEvents.ts'
import type { RunningSession } from '#acquisition/captureSession.ts'
import type { Clock } from '#acquisition/clock.ts'
import type { BenchState, SignalState } from '#contract/bench/bench.ts'
import type { SourceChoice } from '#contract/bench/source.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { TroubleMessage } from '#contract/errors.ts'
import type { Preferences } from '#contract/settings/settings.ts'
import type { EngineParts } from '../../core/engine.ts'
import type { createSilenceWatch } from './silenceWatch.ts'
import type { SourceFacts } from './sourceFacts.ts'

/** What the link tells of its device, besides what the capture session says. */
export type LinkListener = CaptureListener & {
  /** Before the first byte: what is going to be heard, for the record. */
  opening(source: ByteSource, facts: SourceFacts): void
  connected(choice: SourceChoice, source: ByteSource, facts: SourceFacts): void
  lost(problem: TroubleMessage): void
  restored(): void
  /** Anything that the link shows has changed. */
  changed(): void
}

/** A device that was opened, and what goes with it. */
export type Connection = {
  choice: SourceChoice
  source: ByteSource
  facts: SourceFacts
  session: RunningSession
  silence: ReturnType<typeof createSilenceWatch>
}

export type LinkState = {
  connection: Connection | null
  status: BenchState['connection']['status']
  problem: TroubleMessage | null
  signal: SignalState
  armed: boolean
  capturing: boolean
  /** Preferences changed while a capture ran: its end begins a new session. */
  renewalIsDue: boolean
}

export type LinkParts = {
  clock: Clock
  openSource: EngineParts['openSource']
  preferences(): Preferences
  /** The calibration in force; null: none. */
  calibration(): Calibration | null
}

/** What connecting, renewing and losing the device work on. */
export type Link = LinkParts & {
  state: LinkState
  listener: LinkListener
  openSession(facts: SourceFacts): RunningSession
}

const noSignal: SignalState = {
  sampleRateHz: null,
  jitterS: null,
  clock: null,
  missingSamples: 0,
  restarts: 0,
  deviceFaults: [],
  rejectedLines: 0,
  rejectedExample: null,
  noise: null,
  startThreshold: null,
  unstableBecause: 'nothing is connected',
}

/** Of a stream that has only just begun. */
export const newSignal: SignalState = { ...noSignal, unstableBecause: 'the signal has just begun' }

/** A link without a device. What it looks for stays as the person set it, whatever is connected. */
export function nothingConnected(armed = true): LinkState {
  return {
    connection: null,
    status: 'closed',
    problem: null,
    signal: noSignal,
    armed,
    capturing: false,
    renewalIsDue: false,
  }
}
