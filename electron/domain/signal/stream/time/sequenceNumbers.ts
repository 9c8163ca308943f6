import { modulo } from '../../../numbers/modulo.ts'

/** Follows the numbers that a device gives its readings: unsigned, 32 bits wide, wrapping around. */
export type SequenceNumbers = {
  /** Numbers passed since the last reading that counted: 1 without a gap; 0 or less: leave it out; NaN: restarted. */
  passed(sequence: number): number
  /** What comes next may have any number. */
  forget(): void
}

const wrap32 = 2 ** 32
/** So many readings in a row that seem to come from the past: the device has restarted its numbers. */
const restartReadings = 8
/** A loss of more samples at once is a restart of the numbers, not a gap. */
const mostMissing = 1_000_000

/**
 * A reading without a number (NaN), or after one, counts as the next.
 * Checked: tests/domain/signal/stream/time/sampleClock.spec.ts.
 */
export function createSequenceNumbers(): SequenceNumbers {
  const state = { last: Number.NaN, backwards: 0 }
  return {
    passed(sequence) {
      if (Number.isNaN(sequence) || Number.isNaN(state.last)) {
        state.last = sequence
        return 1
      }
      const ahead = modulo(sequence - state.last, wrap32)
      if (ahead > 0 && ahead <= mostMissing) {
        state.last = sequence
        state.backwards = 0
        return ahead
      }
      if (ahead === 0) return 0
      state.backwards += 1
      if (state.backwards < restartReadings) return -1
      state.backwards = 0
      state.last = sequence
      return Number.NaN
    },
    forget() {
      state.last = Number.NaN
      state.backwards = 0
    },
  }
}
