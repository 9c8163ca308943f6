import { type Cell, isWoodFailure, type Treatment, treatedBlocks } from '../observation.ts'
import type { AgeingBlock } from './ageingFit.ts'

/** Blocks of one group at several ages, youngest first; each block has its own age at the break. */
export type Series = {
  readonly group: string
  readonly ages: readonly { ageMonths: number; blocks: readonly AgeingBlock[] }[]
}

/** Fewer ages make no line and no forecast: one through two or three would look surer than it is. */
export const leastAges = 4

/** Groups over their ages; those without an age are no series. Checked: tests/domain/findings/ageing/series.spec.ts. */
export function seriesOf(cells: readonly Cell[], treatment: Treatment): Series[] {
  const byGroup = new Map<string, Series['ages'][number][]>()
  for (const { group, ageMonths, counted } of cells) {
    if (ageMonths === null) continue
    const blocks = treatedBlocks(counted, treatment).map(({ block, strengthMPa }) => ({
      ageMonths: block.ageAtBreakMonths ?? ageMonths,
      strengthMPa,
      held: treatment.woodFailure === 'censored' && isWoodFailure(block, treatment),
    }))
    const ages = byGroup.get(group)
    if (ages === undefined) byGroup.set(group, [{ ageMonths, blocks }])
    else ages.push({ ageMonths, blocks })
  }
  return [...byGroup].map(([group, ages]) => ({ group, ages }))
}
