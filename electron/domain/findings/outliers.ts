import { tQuantile, tTwoSided } from '../numbers/distributions/studentT.ts'
import { momentsOf } from '../numbers/moments.ts'
import { onceForEach } from '../numbers/onceForEach.ts'

/** One value pointed out: which, how far from the mean in SDs, and what that is held against. */
export type Outlier = {
  /** Place in the given values. */
  readonly index: number
  readonly statistic: number
  readonly critical: number
  /** null: the test gives none. */
  readonly p: number | null
}

export type OutlierTest = 'grubbs' | 'generalized-esd'

/** So few equal values are no spread that another could be far from. */
const fewEqual = 3
/** How many of n values are tried: a fifth of them, three at least, ten at most. Each more that is tried makes a false alarm likelier. */
const candidatesOf = (n: number) => Math.max(3, Math.min(10, Math.floor(n / 5)))

/** The value farthest from the mean of those left, in SDs; null where they have no spread. */
function farthest(values: ArrayLike<number>, left: readonly number[]): { index: number; statistic: number } | null {
  const { n, mean, squares } = momentsOf(left.map((index) => values[index]!))
  const sd = Math.sqrt(squares / (n - 1))
  if (!(sd > 0)) return null
  let index = left[0]!
  for (const at of left) if (Math.abs(values[at]! - mean) > Math.abs(values[index]! - mean)) index = at
  return { index, statistic: Math.abs(values[index]! - mean) / sd }
}

/** Critical distance of the farthest of n values: (n − 1) t/√((n − 2 + t²) n), t at α/(2n) with n − 2 degrees of freedom. */
const criticalDistance = onceForEach((n: number, alpha: number) => {
  const t = -tQuantile(alpha / (2 * n), n - 2)
  return ((n - 1) * t) / Math.sqrt((n - 2 + t * t) * n)
})

/**
 * Grubbs' test for one outlier, two-sided at α: the value farthest from the mean, where it is too far. Three values or more.
 *
 *   G = |x − x̄|/s      p = n P(|T| > t), t² = n(n − 2)G²/((n − 1)² − nG²), ν = n − 2; at most 1
 *
 * Source: NIST/SEMATECH e-Handbook 1.3.5.17.1. Checked: tests/domain/findings/outliers.spec.ts against its example.
 */
export function grubbsOutlier(values: ArrayLike<number>, alpha: number): Outlier | null {
  const n = values.length
  if (n < 3) return null
  const found = farthest(
    values,
    Array.from({ length: n }, (_, i) => i),
  )
  if (found === null) return null
  const critical = criticalDistance(n, alpha)
  if (!(found.statistic > critical)) return null
  const g2 = found.statistic ** 2
  const rest = (n - 1) ** 2 - n * g2
  const p = rest > 0 ? Math.min(1, n * tTwoSided(Math.sqrt((n * (n - 2) * g2) / rest), n - 2)) : 0
  return { ...found, critical, p }
}

/**
 * Generalised extreme Studentized deviate test for several outliers, two-sided at α, most extreme first. It goes through
 * all candidates, as two outliers can hide each other. Beside so few equal values any other is no candidate: rounding alone
 * would make it one.
 *
 *   Rᵢ = max|x − x̄|/s of what is left, λᵢ = (m − 1) t/√((m − 2 + t²) m), m = n − i + 1; outliers up to the largest i with Rᵢ > λᵢ
 *
 * The λᵢ are reasonably exact from 15 values on; of fewer, α = 5 % names a block in 7 % (n = 12), 8 % (n = 10) and 16 % (n = 5) of
 * quiet groups (simulated).
 * Source: Rosner, Technometrics 25 (1983) 165; NIST/SEMATECH e-Handbook 1.3.5.17.3.
 * Checked: tests/domain/findings/outliers.spec.ts against its example.
 */
export function esdOutliers(values: ArrayLike<number>, alpha: number): Outlier[] {
  let left = Array.from({ length: values.length }, (_, i) => i)
  const candidates: Outlier[] = []
  let count = 0
  while (candidates.length < candidatesOf(values.length) && left.length >= 3) {
    const found = farthest(values, left)
    const rest = left.filter((index) => index !== found?.index)
    if (found === null || (rest.length <= fewEqual && rest.every((index) => values[index] === values[rest[0]!]))) break
    const critical = criticalDistance(left.length, alpha)
    candidates.push({ ...found, critical, p: null })
    if (found.statistic > critical) count = candidates.length
    left = rest
  }
  return candidates.slice(0, count)
}

/**
 * Places of the values that lie far out, two-sided at α, each with the tests that say so: that of Grubbs first, then most extreme
 * first. Checked: tests/domain/findings/outliers.spec.ts.
 */
export function pointedOut(values: ArrayLike<number>, alpha: number): Map<number, OutlierTest[]> {
  const found = new Map<number, OutlierTest[]>()
  const one = grubbsOutlier(values, alpha)
  if (one !== null) found.set(one.index, ['grubbs'])
  for (const { index } of esdOutliers(values, alpha)) found.set(index, [...(found.get(index) ?? []), 'generalized-esd'])
  return found
}
