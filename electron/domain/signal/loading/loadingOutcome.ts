import type { Outcome } from '#contract/breaks/evaluation.ts'

/** The peak must be so many start thresholds above zero to be the load on a specimen. */
export const leastPeakThresholds = 3
/** A specimen is not loaded in less time than this, s, from onset to 80 % of the peak: a weight put on the bench is no loading. */
const shortestLoadingS = 0.2
/** From so many start thresholds on it is no weight that somebody put there, however fast it came. */
const handledThresholds = 40

/**
 * What a loading was that is over: `none` with a peak below 3 start thresholds, or below 40 of them and there all at once;
 * else a break where it ended in a fall that lasts, an unloading where it did not.
 * `peakLoad` above zero, in the unit of `threshold`; `loadedInS`: time from onset to 80 % of the peak, s.
 * Checked: tests/domain/signal/loading/loadingOutcome.spec.ts.
 */
export function loadingOutcome(loading: {
  peakLoad: number
  threshold: number
  loadedInS: number
  fell: boolean
}): Outcome {
  const { peakLoad, threshold, loadedInS, fell } = loading
  const driven = loadedInS >= shortestLoadingS || peakLoad >= handledThresholds * threshold
  if (!(peakLoad >= leastPeakThresholds * threshold && driven)) return 'none'
  return fell ? 'break' : 'unloading'
}
