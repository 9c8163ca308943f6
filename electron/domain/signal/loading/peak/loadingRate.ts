import type { RecentSamples } from '../../stream/recentSamples.ts'

/** The stretch before the peak: this long at first, s, and so many samples at least. */
const shortestS = 0.1
const leastSamples = 5
/** It is doubled, up to this length, s, while noise makes the slope worse known than this share of it ... */
const longestS = 0.8
const wellKnownShare = 0.02
/** ... unless a line fits the longer stretch worse by this factor than noise explains (the load was not driven evenly). */
const worseFit = 1.3

/**
 * Loading rate just before the peak: slope by least squares over the shortest stretch that ends at the peak and knows it
 * well enough. 0.1 s follows the stroke of a hand pump; on an even but slow and noisy ramp up to 0.8 s are taken.
 * null: fewer than three samples. Checked: tests/domain/signal/loading/peak/loadingRate.spec.ts, tests/reference/corpus.spec.ts.
 */
export function slopeBeforePeak(recent: RecentSamples, peakOrdinal: number, noise: number): number | null {
  let line = recent.lineBefore(peakOrdinal, shortestS, leastSamples)
  if (line === null) return null
  let spanS = shortestS
  while (spanS < longestS) {
    spanS *= 2
    // Few residuals may look smaller than the noise by luck.
    const slopeSE = line.residualSD > 0 ? line.slopeSE * Math.max(1, noise / line.residualSD) : 0
    if (slopeSE <= wellKnownShare * Math.abs(line.slope)) break
    const longer = recent.lineBefore(peakOrdinal, spanS, leastSamples)
    if (longer === null || longer.residualSD > worseFit * Math.max(line.residualSD, noise)) break
    line = longer
  }
  return line.slope
}
