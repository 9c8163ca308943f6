import type { LoadRate } from '#contract/breaks/evaluation.ts'
import { firstAfter } from './curvePart.ts'
import { levelTimes } from './levelTimes.ts'
import type { LoadedCurve } from './loadedCurve.ts'
import { lineThrough } from './straightLine.ts'

export type LoadingRates = {
  meanRateNPerS: number | null
  rates: LoadRate[]
  rateSpreadPercent: number | null
}

/** The way to the peak is cut into so many stretches of equal time ... */
const stretches = 10
/** ... fewer, where they would hold less than this many means. */
const leastMeans = 4
/** What is said of the whole loading is said between these shares of the peak: without the toe and without the last give. */
const lowShare = 0.1
const highShare = 0.9
/** A spread needs so many rates. */
const leastRates = 3

/**
 * The loading rate along the way from onset to peak, N/s.
 *
 *   mean rate   0.8 P / (t90 − t10)      t10, t90 when the load first reaches 10 % and 90 % of P, the peak above the level at rest
 *   rates       least squares slope in each of 10 stretches of equal time
 *   spread      100 s / r̄ of the rates of stretches that lie between t10 and t90      r̄ their mean, s their sample SD (n − 1)
 *
 * The number of stretches is common practice, no source. Checked: tests/domain/signal/events/loadingRates.spec.ts,
 * tests/reference/courseCorpus.spec.ts.
 */
export function loadingRates(
  curve: Pick<LoadedCurve, 'timeS' | 'force' | 'zero' | 'onsetS' | 'peak' | 'peakS'>,
): LoadingRates {
  const { timeS, force, zero, onsetS, peakS } = curve
  const load = curve.peak - zero
  const end = firstAfter(curve, peakS)
  const reachedS = levelTimes(timeS, force, [zero + lowShare * load, zero + highShare * load])
  const [lowS, highS] = [reachedS[0]!, reachedS[1]!]
  const meanRateNPerS = highS > lowS ? ((highShare - lowShare) * load) / (highS - lowS) : null
  const count = Math.min(stretches, Math.floor(end / leastMeans))
  const rates: LoadRate[] = []
  for (let k = 0; k < count; k++) {
    const fromS = onsetS + ((peakS - onsetS) * k) / count
    const toS = onsetS + ((peakS - onsetS) * (k + 1)) / count
    const line = lineThrough(timeS, force, firstAfter(curve, fromS), Math.min(end, firstAfter(curve, toS)))
    if (line !== null) rates.push({ fromS, toS, rateNPerS: line.slope })
  }
  const inside = rates.filter(({ fromS, toS }) => fromS >= lowS && toS <= highS).map(({ rateNPerS }) => rateNPerS)
  return { meanRateNPerS, rates, rateSpreadPercent: spreadPercent(inside) }
}

function spreadPercent(rates: readonly number[]): number | null {
  if (rates.length < leastRates) return null
  const mean = rates.reduce((sum, rate) => sum + rate, 0) / rates.length
  if (!(mean > 0)) return null
  const squares = rates.reduce((sum, rate) => sum + (rate - mean) ** 2, 0)
  return (100 * Math.sqrt(squares / (rates.length - 1))) / mean
}
