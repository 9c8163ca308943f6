// Held by tests/domain/signal/stream/time/sampleClock.spec.ts.
import type { SequenceNumbers } from './sequenceNumbers.ts'
import type { StreamTime } from './streamTime.ts'

/** What the ways to time a reading share. */
export type ClockCourse = {
  readonly stream: StreamTime
  readonly numbers: SequenceNumbers
  /** When the newest reading that counted arrived, s. */
  lastArrivalS: number
  /** The stream was interrupted: the next reading is timed by arrival, whatever the device counts. */
  isCut: boolean
  /** Samples that came twice or too late. */
  leftOut: number
  restarts: number
  /** The device has restarted with the reading of this time; returns it. */
  tellRestart(timeS: number): number
}
