import { type Moments, momentsOf } from '../../numbers/moments.ts'

/** Strengths of the blocks of one group, MPa, in any order. */
export type GroupValues = { readonly group: string; readonly values: Float64Array }

/** A group with its moments. */
export type GroupMoments = { readonly group: string; readonly values: Float64Array } & Moments

/** Groups with at least so many blocks, each with its moments. Checked: tests/domain/findings/compare/groupValues.spec.ts. */
export function withMoments(groups: readonly GroupValues[], leastBlocks: number): GroupMoments[] {
  return groups
    .filter(({ values }) => values.length >= Math.max(leastBlocks, 1))
    .map(({ group, values }) => ({ group, values, ...momentsOf(values) }))
}

/** Mean square within groups, MPa², and its degrees of freedom. Checked: tests/domain/findings/compare/groupValues.spec.ts. */
export function withinGroups(groups: readonly GroupMoments[]): { df: number; variance: number } {
  let df = 0
  let squares = 0
  for (const group of groups) {
    df += group.n - 1
    squares += group.squares
  }
  return { df, variance: squares / df }
}

/**
 * Variance of the difference of two means, MPa², each group with its own spread, and Welch's degrees of freedom; two blocks each.
 *
 *   v = sa²/na + sb²/nb      ν = v²/[(sa²/na)²/(na − 1) + (sb²/nb)²/(nb − 1)]
 *
 * Source: Welch, Biometrika 34 (1947) 28. Checked: tests/domain/findings/compare/groupValues.spec.ts against R t.test.
 */
export function welchDifference(a: GroupMoments, b: GroupMoments): { variance: number; df: number } {
  const ofA = a.squares / (a.n - 1) / a.n
  const ofB = b.squares / (b.n - 1) / b.n
  return { variance: ofA + ofB, df: (ofA + ofB) ** 2 / (ofA ** 2 / (a.n - 1) + ofB ** 2 / (b.n - 1)) }
}
