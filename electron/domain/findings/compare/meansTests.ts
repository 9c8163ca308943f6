import { chiSquareUpperTail } from '../../numbers/distributions/chiSquare.ts'
import { fUpperTail } from '../../numbers/distributions/fisherF.ts'
import { groupRanks } from './groupRanks.ts'
import { type GroupMoments, type GroupValues, withinGroups, withMoments } from './groupValues.ts'
import { noTest, type TestOfGroups, testOrNone } from './testOfGroups.ts'

/** Σ nᵢ (x̄ᵢ − x̄)² over the groups, about their common mean. */
function squaresBetween(groups: readonly GroupMoments[]): number {
  const first = groups[0]!.mean
  const n = groups.reduce((sum, group) => sum + group.n, 0)
  const mean = groups.reduce((sum, group) => sum + group.n * (group.mean - first), 0) / n
  return groups.reduce((sum, group) => sum + group.n * (group.mean - first - mean) ** 2, 0)
}

/**
 * One-way analysis of variance of groups of at least one block.
 *
 *   F = [Σ nᵢ (x̄ᵢ − x̄)²/(k − 1)] / [Σ Σ (x − x̄ᵢ)²/(n − k)]
 *
 * None for fewer than two groups or without spread.
 * Source: NIST/SEMATECH e-Handbook 7.4.3.3. Checked: tests/domain/findings/compare/meansTests.spec.ts against NIST StRD and R.
 */
export function oneWayTest(values: readonly GroupValues[]): TestOfGroups {
  const groups = withMoments(values, 1)
  const { df, variance } = withinGroups(groups)
  if (groups.length < 2 || df < 1) return noTest
  const df1 = groups.length - 1
  const statistic = squaresBetween(groups) / df1 / variance
  return testOrNone({ statistic, df1, df2: df, p: Number.isFinite(statistic) ? fUpperTail(statistic, df1, df) : null })
}

/**
 * Welch's test of equal means where spreads differ; groups of one block are left out.
 *
 *   wᵢ = nᵢ/sᵢ², x̃ = Σwx̄/Σw, F = [Σwᵢ(x̄ᵢ − x̃)²/(k − 1)] / [1 + 2(k − 2)Λ/3], Λ = 3 Σ(1 − wᵢ/Σw)²/(nᵢ − 1)/(k² − 1), ν₂ = 1/Λ
 *
 * None for fewer than two groups or a group without spread.
 * Source: Welch, Biometrika 38 (1951) 330. Checked: tests/domain/findings/compare/meansTests.spec.ts against R oneway.test.
 */
export function welchTest(values: readonly GroupValues[]): TestOfGroups {
  const groups = withMoments(values, 2)
  const k = groups.length
  if (k < 2 || groups.some(({ squares }) => squares === 0)) return noTest
  const weights = groups.map(({ n, squares }) => (n * (n - 1)) / squares)
  const all = weights.reduce((sum, weight) => sum + weight, 0)
  const first = groups[0]!.mean
  const mean = groups.reduce((sum, group, i) => sum + weights[i]! * (group.mean - first), 0) / all
  const between = groups.reduce((sum, group, i) => sum + weights[i]! * (group.mean - first - mean) ** 2, 0)
  const lambda = (3 * groups.reduce((sum, { n }, i) => sum + (1 - weights[i]! / all) ** 2 / (n - 1), 0)) / (k * k - 1)
  const statistic = between / (k - 1) / (1 + (2 * (k - 2) * lambda) / 3)
  return testOrNone({ statistic, df1: k - 1, df2: 1 / lambda, p: fUpperTail(statistic, k - 1, 1 / lambda) })
}

/**
 * Kruskal-Wallis test, corrected for ties.
 *
 *   H = 12/(N(N + 1)) Σ Rᵢ²/nᵢ − 3(N + 1), divided by 1 − Σ(t³ − t)/(N³ − N); χ² with k − 1
 *
 * None for fewer than two groups or where all values are equal.
 * Source: Hollander and Wolfe (1973), chapter 6. Checked: tests/domain/findings/compare/meansTests.spec.ts against R kruskal.test.
 */
export function kruskalWallisTest(values: readonly GroupValues[]): TestOfGroups {
  const { n, tieSum, groups } = groupRanks(values)
  if (groups.length < 2) return noTest
  const between = groups.reduce((sum, group) => sum + group.n * (group.meanRank - (n + 1) / 2) ** 2, 0)
  const statistic = (12 * between) / (n * (n + 1)) / (1 - tieSum / (n ** 3 - n))
  const df1 = groups.length - 1
  return testOrNone({
    statistic,
    df1,
    df2: null,
    p: Number.isFinite(statistic) ? chiSquareUpperTail(statistic, df1) : null,
  })
}
