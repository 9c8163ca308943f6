import { type BlockState, blockStates } from '#contract/findings/overview.ts'
import { momentsOf } from '../../numbers/moments.ts'
import type { GroupBlock } from './overviewGroups.ts'

/** How a block's faces are told apart at a glance; `wood`: torn at or above the usual limit of a wood failure. */
export type TornWood = 'bond' | 'partly' | 'wood' | 'not-assessed'

/** Shares of torn wood at which the next kind begins, percent. */
export const tornWoodFrom = { partly: 25, wood: 75 } as const

/** Which kind a share of torn wood is, percent; null: not assessed. Checked: tests/domain/findings/overview/groupFigures.spec.ts. */
export function tornWoodOf(percent: number | null): TornWood {
  if (percent === null) return 'not-assessed'
  return percent >= tornWoodFrom.wood ? 'wood' : percent >= tornWoodFrom.partly ? 'partly' : 'bond'
}

/** Whether a block has a result that counts. */
export function counts({ state }: Pick<GroupBlock, 'state'>): boolean {
  return state === 'curve' || state === 'peak-only'
}

/** What stands in a group, in MPa; null where no block has a strength that counts. */
export type GroupFigures = {
  /** How many blocks are in each state. */
  readonly states: Readonly<Record<BlockState, number>>
  readonly meanMPa: number | null
  readonly leastMPa: number | null
  readonly mostMPa: number | null
  /** Of the blocks that count: how many broke in the wood, and of how many anybody looked. */
  readonly wood: number
  readonly assessed: number
}

/** Counts a group, and its strengths as observed. Checked: tests/domain/findings/overview/groupFigures.spec.ts. */
export function groupFigures(blocks: readonly GroupBlock[]): GroupFigures {
  const states = Object.fromEntries(blockStates.map((state) => [state, 0])) as Record<BlockState, number>
  for (const { state } of blocks) states[state] += 1
  const counted = blocks.filter(counts)
  const strengths = counted.flatMap(({ strengthMPa }) => (strengthMPa === null ? [] : [strengthMPa]))
  const kinds = counted.map(({ woodFailurePercent }) => tornWoodOf(woodFailurePercent))
  return {
    states,
    meanMPa: strengths.length === 0 ? null : momentsOf(strengths).mean,
    leastMPa: strengths.length === 0 ? null : strengths.reduce((least, value) => Math.min(least, value)),
    mostMPa: strengths.length === 0 ? null : strengths.reduce((most, value) => Math.max(most, value)),
    wood: kinds.filter((kind) => kind === 'wood').length,
    assessed: kinds.filter((kind) => kind !== 'not-assessed').length,
  }
}
