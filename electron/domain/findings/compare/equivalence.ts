import { tProbability } from '../../numbers/distributions/studentT.ts'
import { type GroupValues, welchDifference, withMoments } from './groupValues.ts'

/** Two one-sided tests of one pair; null where the data have none. */
export type EquivalentPair = {
  readonly a: string
  readonly b: string
  readonly marginPercent: number
  readonly pLower: number | null
  readonly pUpper: number | null
  readonly p: number | null
  readonly equivalent: boolean | null
}

/**
 * Whether the means of each two groups differ by less than a margin, in percent of the mean of b: two one-sided Welch tests.
 *
 *   t_lower = (x̄a − x̄b + m)/se, t_upper = (x̄a − x̄b − m)/se, se² = sa²/na + sb²/nb; equivalent where the larger p < 1 − confidence
 *
 * Groups of one block are left out. Null where neither group has any spread.
 * Source: Schuirmann, Journal of Pharmacokinetics and Biopharmaceutics 15 (1987) 657.
 * Checked: tests/domain/findings/compare/equivalence.spec.ts against R t.test.
 */
export function equivalentPairs(
  values: readonly GroupValues[],
  marginPercent: number,
  confidence: number,
): EquivalentPair[] {
  const groups = withMoments(values, 2)
  return groups.flatMap((a, i) =>
    groups.slice(i + 1).map((b) => {
      const { variance, df } = welchDifference(a, b)
      const named = { a: a.group, b: b.group, marginPercent }
      const se = Math.sqrt(variance)
      if (!(se > 0)) return { ...named, pLower: null, pUpper: null, p: null, equivalent: null }
      const margin = Math.abs((marginPercent / 100) * b.mean)
      const difference = a.mean - b.mean
      const pLower = tProbability(-(difference + margin) / se, df)
      const pUpper = tProbability((difference - margin) / se, df)
      const p = Math.max(pLower, pUpper)
      return { ...named, pLower, pUpper, p, equivalent: p < 1 - confidence }
    }),
  )
}
