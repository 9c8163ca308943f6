// Held by tests/acquisition/captureSession.spec.ts.
import type { SampleClock } from '#domain/signal/stream/time/sampleClock.ts'
import type { CaptureListener } from './captureEvents.ts'
import type { CaptureWatch } from './captureWatch.ts'
import type { RejectedLines } from './rejectedLines.ts'
import type { Zero } from './zero.ts'

/** Tells how well the signal can be read. */
export type SignalTeller = {
  /** Whether it is time to tell again. */
  isDue(nowS: number): boolean
  /** `last`: nothing is told after this, so that rejected lines are not kept for later. */
  tell(nowS: number, last?: boolean): void
}

/** The state of the signal is told so often, s. */
const tellEveryS = 0.1
/** Rejected lines are told, and kept, so often, s: a device that sends nothing else must not fill the archive with them. */
const tellRejectedEveryS = 1

/** Nothing has been told yet. */
export function createSignalTeller(
  stream: {
    sampleClock: SampleClock
    watch: Pick<CaptureWatch, 'atRest' | 'capturing'>
    zero: Pick<Zero, 'judge'>
    rejected: RejectedLines
  },
  listener: Pick<CaptureListener, 'signal' | 'rejected'>,
): SignalTeller {
  const { sampleClock, watch, zero, rejected } = stream
  let toldAtS = Number.NEGATIVE_INFINITY
  let toldRejectedAtS = Number.NEGATIVE_INFINITY
  return {
    isDue: (nowS) => nowS - toldAtS >= tellEveryS,
    tell(nowS, last = false) {
      toldAtS = nowS
      if (last || nowS - toldRejectedAtS >= tellRejectedEveryS) {
        toldRejectedAtS = nowS
        rejected.tell(listener.rejected)
      }
      const { noise, startThreshold } = watch.atRest()
      const steadiness = zero.judge()
      const { sampleRateHz, jitterS, clock, missingSamples, restarts, deviceFaults } = sampleClock.state()
      listener.signal({
        ...{ sampleRateHz, jitterS, clock, missingSamples, restarts, deviceFaults: [...deviceFaults] },
        rejectedLines: rejected.count(),
        rejectedExample: rejected.example(),
        noise: noise ?? steadiness.sd,
        startThreshold,
        unstableBecause: watch.capturing() ? 'a break is being recorded' : steadiness.unsteadyBecause,
      })
    },
  }
}
