import { type BlockState, blockStates, type Overview, type OverviewCell } from '#contract/findings/overview.ts'

/** A block in the overview; null where there is none or nobody looked. */
export type GroupBlock = {
  readonly number: string
  readonly specimenId: number | null
  readonly breakId: number | null
  readonly state: BlockState
  readonly strengthMPa: number | null
  readonly woodFailurePercent: number | null
}
/** The blocks that differ in nothing, those with a strength first, weakest first. */
export type OverviewGroup = Omit<OverviewCell, 'blocks'> & { readonly blocks: readonly GroupBlock[] }

/** The cells of an overview with their blocks. Checked: tests/domain/findings/overview/overviewGroups.spec.ts. */
export function overviewGroups({ cells, ...columns }: Overview): OverviewGroup[] {
  const { numbers, specimenIds, breakIds, states, strengthsMPa, woodFailurePercents } = columns
  const idAt = (column: Float64Array, at: number) => (column[at] === 0 ? null : column[at]!)
  const valueAt = (column: Float64Array, at: number) => (Number.isNaN(column[at]) ? null : column[at]!)
  let from = 0
  return cells.map(({ blocks: count, ...traits }) => {
    const first = from
    from += count
    const blocks = Array.from({ length: count }, (_, i): GroupBlock => {
      const at = first + i
      return {
        number: numbers[at]!,
        specimenId: idAt(specimenIds, at),
        breakId: idAt(breakIds, at),
        state: blockStates[states[at]!]!,
        strengthMPa: valueAt(strengthsMPa, at),
        woodFailurePercent: valueAt(woodFailurePercents, at),
      }
    })
    return { ...traits, blocks }
  })
}
