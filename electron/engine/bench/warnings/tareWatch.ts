import type { LiveFrame, TareWarning } from '#contract/bench/bench.ts'
import type { Tare } from '#contract/calibration/forceScale.ts'

/** A zero older than this is said to be old, s: temperature moves a bench in the meantime. Common practice, no source. */
export const tareIsOldAfterS = 15 * 60
/** Drift is looked for in the mean of this much signal, s. */
const meanOverS = 1
/** A mean farther from zero than this share of the start threshold is drift ... */
const driftShareOfThreshold = 0.25
/** ... and in any case it must exceed so many SDs of single readings at the zero. */
const driftSDs = 1
/** A mean farther below zero than this many start thresholds is no drift. Common practice, no source. */
const belowZeroThresholds = 10

/** Watches whether the zero still holds. */
export type TareWatch = {
  frame(frame: Pick<LiveFrame, 'timeS' | 'force' | 'loadRange'>): void
  /**
   * null: the zero is good. `idle`: no break is being caught and nothing is being hung; `steady`:
   * nothing moves.
   */
  warning(tare: Tare | null, nowInstant: string, rest: RestingBench): TareWarning | null
  /** A new zero, or another device: nothing is known of its drift. */
  restart(): void
}

export type RestingBench = { idle: boolean; steady: boolean; startThreshold: number | null; unit: 'N' | 'counts' }

/** Nothing seen yet. */
export function createTareWatch(): TareWatch {
  let fromS = Number.NaN
  let sum = 0
  let count = 0
  let lastMean: number | null = null

  /** The mean that the bench keeps: of the last whole stretch and of what came since, the one nearer to zero; 0 where they disagree. */
  function keptMean(): number | null {
    if (lastMean === null || count === 0) return lastMean
    const newest = sum / count
    if (newest > 0 !== lastMean > 0) return 0
    return Math.abs(newest) < Math.abs(lastMean) ? newest : lastMean
  }

  return {
    frame({ timeS, force, loadRange }) {
      if (loadRange === null) return
      const [lowest, highest] = loadRange
      for (let i = 0; i < timeS.length; i++) {
        // A lone glitch would move the mean of a whole second.
        if (force[i]! < lowest || force[i]! > highest) continue
        if (count === 0) fromS = timeS[i]!
        sum += force[i]!
        count += 1
        if (timeS[i]! - fromS < meanOverS) continue
        lastMean = sum / count
        sum = 0
        count = 0
      }
    },
    warning(tare, nowInstant, { idle, steady, startThreshold, unit }) {
      if (tare === null) return null
      const threshold = startThreshold ?? Number.POSITIVE_INFINITY
      const mean = keptMean()
      // A break is caught as load rises; what goes the other way would otherwise pass unsaid.
      if (idle && mean !== null && mean < -belowZeroThresholds * threshold)
        return { kind: 'far-below-zero', reads: mean, unit }
      const least = Math.max(driftShareOfThreshold * threshold, driftSDs * tare.sd)
      if (idle && steady && mean !== null && Math.abs(mean) > least) return { kind: 'drifted', reads: mean, unit }
      const ageS = (Date.parse(nowInstant) - Date.parse(tare.takenAt)) / 1000
      return ageS > tareIsOldAfterS ? { kind: 'old', minutes: Math.floor(ageS / 60) } : null
    },
    restart() {
      count = 0
      sum = 0
      lastMean = null
    },
  }
}
