import type { RecentSamples } from '../../stream/recentSamples.ts'
import { slopeBeforePeak } from './loadingRate.ts'

/** The highest load of a loading, from its samples as they are. */
export type LoadPeak = {
  /**
   * Takes good samples as long as the load stays near its peak; returns the index of the first with which it does not, or
   * with which the slope before the peak must be kept. That one is taken, too. `ordinal`: of the sample at `from`.
   */
  follow(timeS: Float64Array, force: Float64Array, from: number, to: number, ordinal: number): number
  /** Takes one good sample: it is the peak when it lies above all before it. */
  see(timeS: number, force: number, ordinal: number): void
  /** With a load as near its peak as this no rule but that of the peak applies. */
  isNear(timeS: number, force: number): boolean
  force(): number
  timeS(): number
  /** With so many samples taken the slope before the peak must be kept: soon those before it are forgotten. */
  slopeIsDue(samples: number): boolean
  keepSlope(): void
  /** Slope of the load just before the peak, force per s, as last kept; null: it cannot be told. */
  slope(): number | null
}

/** So many samples after a peak at the latest its slope is found, while the ring still holds those before it. */
const slopeWithin = 1024

/** A load is near its peak above `share` of it and the start threshold, and for so long after it, s. Shares count from `zero`. */
export type NearPeak = { zero: number; threshold: number; share: number; withinS: number }

type State = { force: number; timeS: number; ordinal: number } & NearPeak

/**
 * The peak is the highest good sample: no filter, no mean; lone glitches were left out before (stream/glitchFilter.ts), and
 * what comes after a break is not seen here (loadCurve.ts). Of equal samples it is the first.
 * `noise`: SD of a sample, for the slope (loadingRate.ts). Checked: tests/domain/signal/loading/peak/loadPeak.spec.ts.
 */
export function createLoadPeak(
  recent: RecentSamples,
  start: { highest: number; highestS: number; noise: number },
  near: NearPeak,
): LoadPeak {
  const state: State = { force: start.highest, timeS: start.highestS, ordinal: -1, ...near }
  let slope: number | null = null

  return {
    follow: (timeS, force, from, to, ordinal) => follow(state, timeS, force, from, to, ordinal),
    see: (timeS, force, ordinal) => see(state, timeS, force, ordinal),
    isNear: (timeS, force) => isNear(state, timeS, force),
    force: () => state.force,
    timeS: () => state.timeS,
    slopeIsDue: (samples) => slopeIsDue(state, samples),
    keepSlope() {
      if (state.ordinal < 0) return
      slope = slopeBeforePeak(recent, state.ordinal, start.noise) ?? slope
      state.ordinal = -1
    },
    slope: () => slope,
  }
}

// Outside the closure, so that the compiler keeps one loop for all loadings.

function follow(
  state: State,
  timeS: Float64Array,
  force: Float64Array,
  from: number,
  to: number,
  ordinal: number,
): number {
  for (let i = from; i < to; i++) {
    see(state, timeS[i]!, force[i]!, ordinal + i - from)
    if (!isNear(state, timeS[i]!, force[i]!) || slopeIsDue(state, ordinal + i - from + 1)) return i
  }
  return to
}

function see(state: State, timeS: number, force: number, ordinal: number): void {
  if (!(force > state.force)) return
  state.force = force
  state.timeS = timeS
  state.ordinal = ordinal
}

function isNear(state: State, timeS: number, force: number): boolean {
  const load = force - state.zero
  return (
    load > state.share * (state.force - state.zero) && load >= state.threshold && timeS - state.timeS < state.withinS
  )
}

function slopeIsDue(state: State, samples: number): boolean {
  return state.ordinal >= 0 && samples - state.ordinal > slopeWithin
}
