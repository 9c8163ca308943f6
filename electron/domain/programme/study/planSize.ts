import type { StudyFields } from '#contract/programme/study.ts'
import { cellsOf, seriesOf } from './cells.ts'

/** Before anything is left out: more combinations of levels and ages than this take seconds to go through. */
export const mostCells = 200_000
/** More blocks nobody glues for one study. */
export const mostBlocks = 100_000

/** Why a plan is too large to be made or kept. */
export type PlanSizeFault = { kind: 'cells' | 'blocks'; count: number }

type SizedPlan = Pick<
  StudyFields,
  'adhesives' | 'jointTypes' | 'gapsMm' | 'exposures' | 'agesMonths' | 'leftOut' | 'blocksPerCell' | 'sparesPerSeries'
>

/** What makes a plan too large, null: nothing. Few levels of each factor multiply to more than any memory holds, so it is asked before they are combined. */
export function planSizeFault(plan: SizedPlan): PlanSizeFault | null {
  const { adhesives, jointTypes, gapsMm, exposures, agesMonths, blocksPerCell, sparesPerSeries } = plan
  const cells = adhesives.length * jointTypes.length * gapsMm.length * exposures.length * agesMonths.length
  if (cells > mostCells) return { kind: 'cells', count: cells }
  const blocks = cellsOf(plan).length * blocksPerCell + seriesOf(plan).length * sparesPerSeries
  return blocks > mostBlocks ? { kind: 'blocks', count: blocks } : null
}
