import type { RecentSamples } from '../../stream/recentSamples.ts'
import { slopeBeforePeak } from './loadingRate.ts'

/** The highest load of a loading, from its samples as they are. */
export type LoadPeak = {
  /** Takes a good sample, the one with this ordinal: it is the peak when it lies above all before it. */
  see(timeS: number, force: number, ordinal: number): void
  force(): number
  timeS(): number
  /** With the sample of this ordinal the slope before the peak must be kept: soon its samples are forgotten. */
  slopeIsDue(ordinal: number): boolean
  keepSlope(): void
  /** Slope of the load just before the peak, force per s, as last kept; null: it cannot be told. */
  slope(): number | null
}

/** So many samples after a peak at the latest its slope is found, while the ring still holds those before it. */
const slopeWithin = 1024

/**
 * The peak is the highest good sample: no filter, no mean; lone glitches were left out before (stream/glitchFilter.ts), and
 * what comes after a break is not seen here (loadCurve.ts). Of equal samples it is the first.
 * `noise`: SD of a sample, for the slope (loadingRate.ts). Checked: tests/domain/signal/loading/peak/loadPeak.spec.ts.
 */
export function createLoadPeak(
  recent: RecentSamples,
  start: { highest: number; highestS: number; noise: number },
): LoadPeak {
  const state = { force: start.highest, timeS: start.highestS, ordinal: -1 }
  let slope: number | null = null

  return {
    see(timeS, force, ordinal) {
      if (!(force > state.force)) return
      state.force = force
      state.timeS = timeS
      state.ordinal = ordinal
    },
    force: () => state.force,
    timeS: () => state.timeS,
    slopeIsDue: (ordinal) => state.ordinal >= 0 && ordinal + 1 - state.ordinal > slopeWithin,
    keepSlope() {
      if (state.ordinal < 0) return
      slope = slopeBeforePeak(recent, state.ordinal, start.noise) ?? slope
      state.ordinal = -1
    },
    slope: () => slope,
  }
}
