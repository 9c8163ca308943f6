import { createSampleInterval } from './sampleInterval.ts'

/** The time that is handed out: seconds since the first sample, whole microseconds, strictly rising. */
export type StreamTime = {
  /** Time of the newest sample, s; NaN before the first. */
  lastS(): number
  /** The same before it was rounded to whole microseconds: an even clock goes on from here. */
  exactS(): number
  /** Hands out the first time. */
  first(): number
  /** Moves on to a time, s. `missing`: samples lost before it; NaN: told by the time step. */
  advance(wantedS: number, missing: number): number
  /** Usual step, s; NaN while unknown. */
  usualS(): number
  /** SD of what the steps differ from the usual one, s. */
  jitterS(): number
  missing(): number
  /** What comes next has another step, of which nothing is known yet. */
  relearn(): void
}

/** The jitter is averaged over about so many steps. */
const jitterMemory = 1 / 256
const microseconds = 1e6
/** After so many readings the usual step is known well enough to count what is missing. */
const learningReadings = 16

/**
 * Rounds to whole microseconds, carrying on what the rounding left over where the clock is even; keeps the usual step
 * (sampleInterval.ts) and the jitter about it; tells `gap` of missing samples.
 *
 *   variance += ((step − usual)² − variance) / 256
 *
 * Checked: tests/domain/signal/stream/time/streamTime.spec.ts, tests/domain/signal/stream/time/sampleClock.spec.ts.
 */
export function createStreamTime(gap: (timeS: number, missing: number) => void): StreamTime {
  let interval = createSampleInterval()
  const firstTimesS = new Float64Array(learningReadings)
  const state = { lastUs: 0, lastS: Number.NaN, exactS: Number.NaN, variance: 0, missing: 0, learning: 0 }

  function advance(wantedS: number, missing: number): number {
    const timeUs = Math.max(Math.round(wantedS * microseconds), state.lastUs + 1)
    const timeS = timeUs / microseconds
    const stepS = timeS - state.lastS
    state.lastUs = timeUs
    state.lastS = timeS
    state.exactS = wantedS
    const timed = interval.push(timeS)
    const lost = Number.isNaN(missing) ? timed : missing
    if (lost > 0) {
      state.missing += lost
      gap(timeS, lost)
    }
    if (state.learning < learningReadings) learn(timeS)
    else if (timed === 0 && lost === 0) {
      const deviation = stepS - interval.usualS()
      state.variance += (deviation * deviation - state.variance) * jitterMemory
    }
    return timeS
  }

  function learn(timeS: number): void {
    firstTimesS[state.learning] = timeS
    state.learning += 1
    if (state.learning === learningReadings) {
      interval.learn(firstTimesS, learningReadings)
      interval.push(timeS)
    }
  }

  return {
    lastS: () => state.lastS,
    exactS: () => state.exactS,
    first() {
      state.lastUs = 0
      state.lastS = 0
      state.exactS = 0
      learn(0)
      return 0
    },
    advance,
    usualS: () => interval.usualS(),
    jitterS: () => Math.sqrt(state.variance),
    missing: () => state.missing,
    relearn() {
      interval = createSampleInterval()
      state.variance = 0
      state.learning = 0
    },
  }
}
