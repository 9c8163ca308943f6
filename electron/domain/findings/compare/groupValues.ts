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
