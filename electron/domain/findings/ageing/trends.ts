import { normalProbability } from '../../numbers/distributions/normal.ts'
import type { AgedBlock } from './agedBlock.ts'
import { pairsBelow, senSlope } from './senSlope.ts'

export type Trend = { readonly statistic: number; readonly z: number | null; readonly p: number | null }

/** Sizes of the sets of equal values, those of one included. */
function tieSizes(values: readonly number[]): number[] {
  const counts = new Map<number, number>()
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1)
  return [...counts.values()]
}

const sumOf = (sizes: readonly number[], term: (t: number) => number) => sizes.reduce((sum, t) => sum + term(t), 0)
const pairs = (t: number) => t * (t - 1)
const triples = (t: number) => t * (t - 1) * (t - 2)
const weighted = (t: number) => t * (t - 1) * (2 * t + 5)

/** Σ sign(age difference) sign(strength difference) over all pairs of blocks: rising pairs less falling ones. */
function kendallScore(blocks: readonly AgedBlock[]): number {
  const upsideDown = blocks.map(({ ageMonths, strengthMPa }) => ({ ageMonths, strengthMPa: -strengthMPa }))
  return pairsBelow(upsideDown, 0) - pairsBelow(blocks, 0)
}

/** Variance of Kendall's score with ties among ages (t) and strengths (u). */
function scoreVariance(blocks: readonly AgedBlock[]): number {
  const n = blocks.length
  const t = tieSizes(blocks.map(({ ageMonths }) => ageMonths))
  const u = tieSizes(blocks.map(({ strengthMPa }) => strengthMPa))
  const third = n > 2 ? (sumOf(t, triples) * sumOf(u, triples)) / (9 * triples(n)) : 0
  return (
    (weighted(n) - sumOf(t, weighted) - sumOf(u, weighted)) / 18 +
    (sumOf(t, pairs) * sumOf(u, pairs)) / (2 * pairs(n)) +
    third
  )
}

const twoSided = (z: number | null) => (z === null ? null : 2 * normalProbability(-Math.abs(z)))

/**
 * Mann-Kendall trend of single blocks over their ages, with Sen's slope.
 *
 *   S = Σ sign(Δage) sign(Δstrength)      z = (S − sign S)/√Var S, Var with ties in both      slope: median of Δstrength/Δage
 *
 * z and p null where all ages or all strengths are equal.
 * Source: Kendall, Rank Correlation Methods, 1975; Gilbert, Statistical Methods for Environmental Pollution Monitoring, 1987 (from
 * memory). Checked: tests/domain/findings/ageing/trends.spec.ts against EPA QA/G-9S and R.
 */
export function mannKendall(blocks: readonly AgedBlock[]): Trend & { slopeMPaPerYear: number | null } {
  const statistic = kendallScore(blocks)
  const variance = scoreVariance(blocks)
  const z = variance > 0 ? (statistic - Math.sign(statistic)) / Math.sqrt(variance) : null
  const slope = senSlope(blocks)
  return { statistic, z, p: twoSided(z), slopeMPaPerYear: slope === null ? null : 12 * slope }
}

/**
 * Jonckheere-Terpstra trend over the ages: pairs of blocks of different ages in which the later is stronger, ties half.
 *
 *   J = (S + pairs)/2      z = (J − pairs/2)/√(Var S/4), pairs: of blocks of different ages; no continuity correction
 *
 * Source: Hollander and Wolfe (1973), 6.2, with ties in the variance as Kendall's score has them (from memory).
 * Checked: tests/domain/findings/ageing/trends.spec.ts against R.
 */
export function jonckheere(blocks: readonly AgedBlock[]): Trend {
  const ages = tieSizes(blocks.map(({ ageMonths }) => ageMonths))
  const unlike = (pairs(blocks.length) - sumOf(ages, pairs)) / 2
  const score = kendallScore(blocks)
  const variance = scoreVariance(blocks)
  const z = variance > 0 ? score / Math.sqrt(variance) : null
  return { statistic: (score + unlike) / 2, z, p: twoSided(z) }
}
