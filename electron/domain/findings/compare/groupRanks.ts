import { midranksOf } from '../../numbers/midranks.ts'
import { momentsOf } from '../../numbers/moments.ts'
import type { GroupValues } from './groupValues.ts'

/** Groups that have blocks by the ranks of these among all together. */
export type GroupRanks = {
  /** Of all groups together. */
  readonly n: number
  /** Σ(t³ − t) over the sets of equal values. */
  readonly tieSum: number
  readonly groups: readonly { readonly group: string; readonly n: number; readonly meanRank: number }[]
}

/** Ranks of all values together, 1 the weakest, equal ones sharing theirs. Checked: tests/domain/findings/compare/groupRanks.spec.ts. */
export function groupRanks(values: readonly GroupValues[]): GroupRanks {
  const filled = values.filter((group) => group.values.length > 0)
  const all = filled.flatMap((group) => [...group.values])
  const { ranks, tieSum } = midranksOf(all)
  let from = 0
  const groups = filled.map(({ group, values: { length } }) => {
    const own = ranks.subarray(from, from + length)
    from += length
    return { group, n: length, meanRank: momentsOf(own).mean }
  })
  return { n: all.length, tieSum, groups }
}
