import { modulo } from '../../../numbers/modulo.ts'

/** Follows the numbers that a device gives its readings: unsigned, 32 bits wide, wrapping around. */
export type SequenceNumbers = {
  /**
   * Numbers passed since the last reading that counted: 1 without a gap; 0 or less: leave it out; NaN: restarted.
   * `restarted`: the device's time has shown that.
   */
  passed(sequence: number, restarted?: boolean): number
  /** What comes next may have any number. */
  forget(): void
}

const wrap32 = 2 ** 32
/** A loss of more samples at once is a restart of the numbers, not a gap. */
const mostMissing = 1_000_000
/** Numbers below this, after one that stood this much higher at least, begin anew: the device was switched on just now. */
const justBegun = 100
const leastFall = 1000
/** Where narrower counters end: their 0 follows on that. */
const narrowEnds: ReadonlySet<number> = new Set([2 ** 8, 2 ** 16, 2 ** 24])

/**
 * A reading without a number (NaN), or after one, counts as the next. Numbers have restarted where they begin anew, or with
 * the second of two readings from the past (or from far ahead) that follow each other: one alone is a line that came too
 * late or was damaged.
 * Checked: tests/domain/signal/stream/time/sampleClock.spec.ts.
 */
export function createSequenceNumbers(): SequenceNumbers {
  const state = { last: Number.NaN, past: Number.NaN }

  /** The reading counts. */
  function take(sequence: number, passed: number): number {
    state.last = sequence
    state.past = Number.NaN
    return passed
  }

  return {
    passed(sequence, restarted = false) {
      if (restarted && !Number.isNaN(sequence)) return take(sequence, Number.NaN)
      if (Number.isNaN(sequence) || Number.isNaN(state.last)) return take(sequence, 1)
      const ahead = modulo(sequence - state.last, wrap32)
      if (ahead > 0 && ahead <= mostMissing) return take(sequence, ahead)
      if (ahead === 0) return 0
      if (sequence === 0 && narrowEnds.has(state.last + 1)) return take(sequence, 1)
      const begunAnew = sequence < justBegun && state.last - sequence >= leastFall
      if (begunAnew || sequence === state.past + 1) return take(sequence, Number.NaN)
      state.past = sequence
      return -1
    },
    forget() {
      take(Number.NaN, 1)
    },
  }
}
