import type { DetectionSettings } from '#contract/breaks/detection.ts'
import { leastPeakThresholds } from './loadingOutcome.ts'

/** Watches whether a load that has left its peak without a break will be driven on. */
export type LetDownWatch = {
  /** The load stays near its peak. */
  near(): void
  /** Takes a sample that does not; true when the loading is over. Loads above zero; `sincePeakS`: time since the peak, s. */
  isOver(timeS: number, load: number, peakLoad: number, sincePeakS: number): boolean
}

/** A load that stays below this share of the peak for so long, s, will not be driven on. */
export const forgottenShare = 0.25
const forgottenS = 30
/** So does one that never came to anything. */
export const idleLoadS = 60
/** And one that makes no new peak for so long, s. */
const longestHoldS = 1800

/**
 * The loading is over when its load
 *
 *   stays below max(endShare × peak, threshold) for endHoldS, or below a quarter of the peak for 30 s,
 *   makes no new peak for half an hour, or for a minute where the peak is below 3 start thresholds.
 *
 * Checked: tests/domain/signal/loading/letDown.spec.ts.
 */
export function createLetDownWatch(
  { endShare, endHoldS }: Pick<DetectionSettings, 'endShare' | 'endHoldS'>,
  threshold: number,
): LetDownWatch {
  const state = { lowSinceS: Number.NaN, forgottenSinceS: Number.NaN }
  return {
    near() {
      state.lowSinceS = Number.NaN
      state.forgottenSinceS = Number.NaN
    },
    isOver(timeS, load, peakLoad, sincePeakS) {
      state.lowSinceS = since(state.lowSinceS, timeS, load < Math.max(endShare * peakLoad, threshold))
      state.forgottenSinceS = since(state.forgottenSinceS, timeS, load < forgottenShare * peakLoad)
      if (timeS - state.lowSinceS >= endHoldS) return true
      if (timeS - state.forgottenSinceS >= forgottenS) return true
      return sincePeakS >= longestHoldS || (sincePeakS >= idleLoadS && peakLoad < leastPeakThresholds * threshold)
    },
  }
}

/** Since when something is so, s; NaN: it is not. */
function since(beforeS: number, nowS: number, isSo: boolean): number {
  if (!isSo) return Number.NaN
  return Number.isNaN(beforeS) ? nowS : beforeS
}
