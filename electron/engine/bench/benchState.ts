// Held by tests/engine/createEngine.spec.ts.
import type { BenchPhase, BenchState, TareWarning } from '#contract/bench/bench.ts'
import type { Calibration } from '#contract/calibration/calibration.ts'
import type { BenchOccupation } from './benchOccupation.ts'
import { calibrationAtHand, calibrationShown, calibrationUnused } from './calibrationShown.ts'
import type { CaptureProgress } from './capture/captureProgress.ts'
import type { ShownOutcome } from './capture/shownOutcome.ts'
import type { SpecimenQueue } from './capture/specimenQueue.ts'
import type { DeviceLink } from './device/deviceLink.ts'
import type { createOverloadWatch } from './warnings/overloadWatch.ts'
import type { StorageWatch } from './warnings/storageWatch.ts'
import type { TareWatch } from './warnings/tareWatch.ts'
import type { ZeroMoved } from './warnings/zeroMoved.ts'

/** The parts of a bench that have something to show. */
export type ShownParts = {
  link: DeviceLink
  occupation: BenchOccupation
  queue: SpecimenQueue
  progress: CaptureProgress
  outcome: ShownOutcome
  overload: ReturnType<typeof createOverloadWatch>
  tareWatch: TareWatch
  zeroMoved: ZeroMoved
  storage: StorageWatch
}

/** All that the bench shows, at one moment. */
export function benchState(shown: ShownParts, inForce: Calibration | null, nowInstant: string): BenchState {
  const { link, occupation, queue, progress, overload } = shown
  return {
    connection: link.connection(),
    phase: phaseOf(shown),
    armed: link.armed(),
    signal: link.signal(),
    scale: link.scale(),
    calibration: calibrationShown(calibrationAtHand(link.scale(), inForce), nowInstant),
    calibrationUnused: calibrationUnused(inForce, link.connection(), link.readingUnit()),
    capacityN: link.facts().settings.capacityN,
    tare: link.tare(),
    tareWarning: tareWarning(shown, nowInstant),
    zeroMoved: shown.zeroMoved.moved(),
    busyWith: occupation.busyWith(),
    overload: overload.level(),
    capacityShare: overload.share(),
    runningPeak: progress.runningPeak(),
    captureBreakId: progress.captureBreakId(),
    outcomeBreakId: progress.outcomeBreakId(),
    specimen: queue.current(),
    again: queue.again(),
    next: queue.next(),
    waitingSpecimens: queue.waiting(),
    breaking: queue.session(),
    lastBreak: progress.lastBreak(),
    storageProblem: shown.storage.problem(),
  }
}

function phaseOf({ link, outcome }: ShownParts): BenchPhase {
  if (link.capturing()) return 'loading'
  if (!link.hearing()) return 'no-signal'
  return outcome.shown() ?? (link.tare() === null ? 'settling' : 'waiting')
}

function tareWarning({ link, occupation, tareWatch }: ShownParts, nowInstant: string): TareWarning | null {
  const { unstableBecause, startThreshold } = link.signal()
  const idle = !link.capturing() && occupation.busyWith() === null
  const steady = unstableBecause === null
  const unit = link.scale().kind === 'none' ? 'counts' : 'N'
  return tareWatch.warning(link.tare(), nowInstant, { idle, steady, startThreshold, unit })
}
