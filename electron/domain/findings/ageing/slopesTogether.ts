import { tCritical } from '../../numbers/distributions/studentT.ts'
import { bestVarianceRatio } from '../../numbers/varianceRatio.ts'
import type { AgedBlock } from './agedBlock.ts'
import { slopesUncertainty } from './slopesUncertainty.ts'

/** Change of one series, alone and helped by the others; percent a year of its own strength. */
export type SlopeTogether = {
  readonly group: string
  readonly ownPercentPerYear: number
  readonly percentPerYear: number
  readonly lowPercentPerYear: number
  readonly highPercentPerYear: number
  /** How far it was drawn to the common change: 0 not at all, 1 wholly. */
  readonly shrinkage: number
}

/** What all series say of each other. Percent a year; `blockSdPercent` is the spread of single blocks. */
export type SlopesTogether = {
  readonly commonPercentPerYear: number
  readonly commonLowPercentPerYear: number
  readonly commonHighPercentPerYear: number
  readonly spreadPercentPerYear: number
  readonly blockSdPercent: number
  readonly series: SlopeTogether[]
}

/** Fewer series say nothing of how their slopes spread. */
const leastSeries = 3

type LineSums = { group: string; n: number; xx: number; xy: number; yy: number }

/** Sums of squares and products about the means, of the logarithm of strength against years. */
function lineSums(group: string, blocks: readonly AgedBlock[]): LineSums {
  const n = blocks.length
  const points = blocks.map(({ ageMonths, strengthMPa }) => ({ x: ageMonths / 12, y: Math.log(strengthMPa) }))
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / n
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / n
  let [xx, xy, yy] = [0, 0, 0]
  for (const { x, y } of points) {
    xx += (x - meanX) ** 2
    xy += (x - meanX) * (y - meanY)
    yy += (y - meanY) ** 2
  }
  return { group, n, xx, xy, yy }
}

/**
 * Lines of several series together: ln strength = start of the series + its slope x years, each series with a start of its own, the slopes
 * normal about a common one with a spread of their own. Many noisy lines so help each other: each slope is drawn to the common one
 * as far as its own blocks leave it open. Restricted maximum likelihood over the ratio of the variances.
 *
 *   D(λ) = (N − k − 1) ln RSS + Σ ln(1 + λ Sxxᵢ) + ln Σ Sxxᵢ/(1 + λ Sxxᵢ)      bᵢ = β + λSxxᵢ/(1 + λSxxᵢ) (Sxyᵢ/Sxxᵢ − β)
 *
 * Intervals by slopesUncertainty; those of single slopes with N − k − 1 degrees of freedom. The series are those with two ages or more
 * and two blocks; strengths in MPa, all above 0, as observed: what the wood held back is no part of it. Null with fewer than three of
 * them, without a block more than two a series, or without spread.
 * Source: Harville, Journal of the American Statistical Association 72 (1977) 320 (from memory). Checked:
 * tests/domain/findings/ageing/slopesTogether.spec.ts against R lme4.
 */
export function slopesTogether(
  series: readonly { group: string; blocks: readonly AgedBlock[] }[],
  confidence: number,
): SlopesTogether | null {
  const lines = series.map(({ group, blocks }) => lineSums(group, blocks)).filter(({ xx }) => xx > 0)
  const df = lines.reduce((sum, { n }) => sum + n, 0) - lines.length - 1
  const spareDf = df + 1 - lines.length
  if (lines.length < leastSeries || spareDf < 1) return null
  const fitAt = (ratio: number) => {
    let [information, product, rest, logV] = [0, 0, 0, 0]
    for (const { xx, xy, yy } of lines) {
      const weight = 1 / (1 + ratio * xx)
      information += xx * weight
      product += xy * weight
      rest += yy - ratio * xy * xy * weight
      logV -= Math.log(weight)
    }
    const slope = product / information
    const rss = rest - slope * product
    return { slope, information, rss, deviance: df * Math.log(rss) + logV + Math.log(information) }
  }
  if (!(fitAt(0).rss > 1e-20)) return null
  const ratio = bestVarianceRatio((candidate) => fitAt(candidate).deviance)
  const { slope, rss } = fitAt(ratio)
  const variance = rss / df
  const { ofCommon, commonDf, ofSeries } = slopesUncertainty(
    lines.map(({ xx }) => xx),
    spareDf,
    ratio,
  )
  const halfOf = (share: number, degrees: number) => tCritical(confidence, degrees) * Math.sqrt(variance * share)
  const halfOfCommon = halfOf(ofCommon, Math.min(Math.max(commonDf, 1), df))
  const percent = (change: number) => 100 * Math.expm1(change)
  return {
    commonPercentPerYear: percent(slope),
    commonLowPercentPerYear: percent(slope - halfOfCommon),
    commonHighPercentPerYear: percent(slope + halfOfCommon),
    spreadPercentPerYear: 100 * Math.sqrt(ratio * variance),
    blockSdPercent: 100 * Math.sqrt(variance),
    series: lines.map(({ group, xx, xy }, i) => {
      const shrinkage = 1 / (1 + ratio * xx)
      const drawn = slope + (1 - shrinkage) * (xy / xx - slope)
      const half = halfOf(ofSeries[i]!, df)
      return {
        group,
        ownPercentPerYear: percent(xy / xx),
        percentPerYear: percent(drawn),
        lowPercentPerYear: percent(drawn - half),
        highPercentPerYear: percent(drawn + half),
        shrinkage,
      }
    }),
  }
}
