import { normalProbability } from '../../numbers/distributions/normal.ts'
import { studentizedRangeQuantile, studentizedRangeUpperTail } from '../../numbers/distributions/studentizedRange.ts'
import { onceForEach } from '../../numbers/onceForEach.ts'
import { groupRanks } from './groupRanks.ts'
import { type GroupMoments, type GroupValues, welchDifference, withinGroups, withMoments } from './groupValues.ts'

/** How pairs are compared. */
export type PairMethod = 'tukey-kramer' | 'games-howell' | 'dunn-holm'

/** One pair, a before b in the order of the groups; MPa; null where the data have none. */
export type ComparedPair = {
  readonly a: string
  readonly b: string
  readonly differenceMPa: number | null
  readonly lowMPa: number | null
  readonly highMPa: number | null
  readonly statistic: number | null
  readonly df: number | null
  /** For all pairs together. */
  readonly p: number | null
}

function pairsOf<G, P>(groups: readonly G[], compare: (a: G, b: G) => P): P[] {
  return groups.flatMap((a, i) => groups.slice(i + 1).map((b) => compare(a, b)))
}

/** A pair by its difference, the variance of half its standard error, and the studentized range of k. */
function byRange(
  a: GroupMoments,
  b: GroupMoments,
  spread: { halfVariance: number; df: number; k: number },
  critical: () => number,
): ComparedPair {
  const differenceMPa = a.mean - b.mean
  const se = Math.sqrt(spread.halfVariance)
  const named = { a: a.group, b: b.group, differenceMPa }
  if (!(se > 0)) return { ...named, lowMPa: null, highMPa: null, statistic: null, df: null, p: null }
  const statistic = differenceMPa / se
  const half = critical() * se
  return {
    ...named,
    lowMPa: differenceMPa - half,
    highMPa: differenceMPa + half,
    statistic,
    df: spread.df,
    p: studentizedRangeUpperTail(Math.abs(statistic), spread.k, spread.df),
  }
}

/**
 * All pairs by Tukey and Kramer: one spread for all groups. Empty where fewer than two groups have blocks or no group two.
 *
 *   q = (x̄a − x̄b)/√(s²/2 (1/na + 1/nb)),  s² pooled, ν = n − k;  studentized range of k
 *
 * Source: NIST/SEMATECH e-Handbook 7.4.7.1; Kramer, Biometrics 12 (1956) 307.
 * Checked: tests/domain/findings/compare/pairs.spec.ts against the handbook's example and R TukeyHSD.
 */
export function tukeyKramer(values: readonly GroupValues[], confidence: number): ComparedPair[] {
  const groups = withMoments(values, 1)
  const { df, variance } = withinGroups(groups)
  const k = groups.length
  if (k < 2 || df < 1) return []
  let quantile: number | null = null
  const critical = () => {
    quantile ??= studentizedRangeQuantile(1 - confidence, k, df)
    return quantile
  }
  return pairsOf(groups, (a, b) =>
    byRange(a, b, { halfVariance: (variance / 2) * (1 / a.n + 1 / b.n), df, k }, critical),
  )
}

/**
 * All pairs by Games and Howell: each pair with its own spreads and Welch's degrees of freedom. Groups of one block are left out.
 *
 *   q = (x̄a − x̄b)/√((sa²/na + sb²/nb)/2);  studentized range of k
 *
 * Source: Games and Howell, Journal of Educational Statistics 1 (1976) 113.
 * Checked: tests/domain/findings/compare/pairs.spec.ts against scipy.stats.tukey_hsd(equal_var=False).
 */
export function gamesHowell(values: readonly GroupValues[], confidence: number): ComparedPair[] {
  const groups = withMoments(values, 2)
  const k = groups.length
  const quantileOf = rangeQuantiles(confidence, k)
  return pairsOf(groups, (a, b) => {
    const { variance, df } = welchDifference(a, b)
    return byRange(a, b, { halfVariance: variance / 2, df, k }, () => quantileOf(df))
  })
}

/** Quantiles for many degrees of freedom, each sought near the line in 1/ν through those of the nearest whole ones. */
function rangeQuantiles(confidence: number, k: number): (df: number) => number {
  const atWhole = onceForEach((df: number) => studentizedRangeQuantile(1 - confidence, k, df))
  return (df) => {
    const below = Math.floor(df)
    if (below < 2 || df === below) return studentizedRangeQuantile(1 - confidence, k, df)
    const share = (1 / below - 1 / df) / (1 / below - 1 / (below + 1))
    const near = atWhole(below) + share * (atWhole(below + 1) - atWhole(below))
    return studentizedRangeQuantile(1 - confidence, k, df, near)
  }
}

/**
 * All pairs by Dunn's test on the ranks of all values together, p values adjusted by Holm.
 *
 *   z = (R̄a − R̄b)/√([N(N + 1)/12 − Σ(t³ − t)/(12(N − 1))] (1/na + 1/nb))
 *
 * Source: Dunn, Technometrics 6 (1964) 241; Holm, Scandinavian Journal of Statistics 6 (1979) 65.
 * Checked: tests/domain/findings/compare/pairs.spec.ts against R.
 */
export function dunnHolm(values: readonly GroupValues[]): ComparedPair[] {
  const { n, tieSum, groups } = groupRanks(values)
  const variance = (n * (n + 1)) / 12 - tieSum / (12 * (n - 1))
  const pairs = pairsOf(groups, (a, b) => {
    const z = (a.meanRank - b.meanRank) / Math.sqrt(variance * (1 / a.n + 1 / b.n))
    const found = Number.isFinite(z)
    return {
      a: a.group,
      b: b.group,
      statistic: found ? z : null,
      p: found ? 2 * normalProbability(-Math.abs(z)) : null,
    }
  })
  const adjusted = holm(pairs.map(({ p }) => p))
  return pairs.map((pair, i) => ({
    ...pair,
    p: adjusted[i]!,
    differenceMPa: null,
    lowMPa: null,
    highMPa: null,
    df: null,
  }))
}

/** Holm's step-down: the i-th smallest of m p values times m − i + 1, never smaller than one before it, at most 1. */
function holm(ps: readonly (number | null)[]): (number | null)[] {
  const order = ps.flatMap((p, at) => (p === null ? [] : [{ p, at }])).sort((one, other) => one.p - other.p)
  const adjusted: (number | null)[] = ps.map(() => null)
  let least = 0
  order.forEach(({ p, at }, i) => {
    least = Math.min(Math.max(least, p * (order.length - i)), 1)
    adjusted[at] = least
  })
  return adjusted
}
