import { momentsOf, varianceOf } from '../numbers/moments.ts'
import { quantileOfSorted } from '../numbers/quantile.ts'
import { meanInterval } from './meanInterval.ts'
import { type Cell, isWoodFailure, type Treatment, treatedBlocks } from './observation.ts'
import { type ToleranceTerms, toleranceFactor, toleranceOrder } from './toleranceLimit.ts'

/** What a group is, in MPa and percent; null where there are too few blocks. */
export type GroupSummary = {
  readonly n: number
  readonly excluded: number
  readonly censored: number
  readonly meanMPa: number | null
  readonly sdMPa: number | null
  readonly cvPercent: number | null
  readonly meanLowMPa: number | null
  readonly meanHighMPa: number | null
  readonly medianMPa: number | null
  readonly q1MPa: number | null
  readonly q3MPa: number | null
  readonly minMPa: number | null
  readonly maxMPa: number | null
  readonly lowerToleranceMPa: number | null
  readonly lowerToleranceNonparametricMPa: number | null
  readonly woodFailureMeanPercent: number | null
  readonly allWoodSharePercent: number | null
}

/** How surely a summary speaks. */
export type SummaryTerms = { confidence: number; tolerance: ToleranceTerms }

/** The usual terms of timber practice, as the defaults of findings (contract/findings/options.ts). */
export const usualTerms: SummaryTerms = { confidence: 0.95, tolerance: { confidence: 0.75, content: 0.95 } }

/**
 * Summary of one group at one age: mean with its t interval, SD with n − 1, quartiles of type 7, lower tolerance limits.
 *
 *   x̄ ± t(ν = n − 1) s/√n      x̄ − k s      torn wood over the blocks for which it was recorded
 *
 * Source: NIST/SEMATECH e-Handbook 1.3.5.2 and 7.2.6. Checked: tests/domain/findings/groupSummary.spec.ts against R.
 */
export function groupSummary(cell: Cell, treatment: Treatment, terms: SummaryTerms): GroupSummary {
  const blocks = treatedBlocks(cell.counted, treatment)
  const sorted = Float64Array.from(blocks, ({ strengthMPa }) => strengthMPa).sort()
  const n = sorted.length
  const moments = n === 0 ? null : momentsOf(sorted)
  const variance = moments === null ? null : varianceOf(moments)
  const meanMPa = moments?.mean ?? null
  const sdMPa = variance === null ? null : Math.sqrt(variance)
  const interval = meanInterval(moments, terms.confidence)
  const quantile = (p: number) => (n === 0 ? null : quantileOfSorted(sorted, p))
  const order = toleranceOrder(n, terms.tolerance)
  const wood = blocks.flatMap(({ block: { woodFailurePercent } }) =>
    woodFailurePercent === null ? [] : [woodFailurePercent],
  )
  return {
    n,
    excluded: cell.excluded,
    censored:
      treatment.woodFailure === 'censored' ? cell.counted.filter((one) => isWoodFailure(one, treatment)).length : 0,
    meanMPa,
    sdMPa,
    cvPercent: sdMPa === null || meanMPa === null || meanMPa === 0 ? null : (100 * sdMPa) / meanMPa,
    meanLowMPa: interval.low,
    meanHighMPa: interval.high,
    medianMPa: quantile(0.5),
    q1MPa: quantile(0.25),
    q3MPa: quantile(0.75),
    minMPa: quantile(0),
    maxMPa: quantile(1),
    lowerToleranceMPa:
      sdMPa === null || meanMPa === null ? null : meanMPa - toleranceFactor(n, terms.tolerance) * sdMPa,
    lowerToleranceNonparametricMPa: order === 0 ? null : sorted[order - 1]!,
    woodFailureMeanPercent: wood.length === 0 ? null : momentsOf(wood).mean,
    allWoodSharePercent:
      wood.length === 0 ? null : (100 * wood.filter((percent) => percent >= 100).length) / wood.length,
  }
}
