import { mostBlocks, mostCells, type PlanSizeFault } from '#domain/programme/study/planSize.ts'
import { countOf } from '../../units/counts.ts'
import { writeCount } from '../../units/numbers.ts'

/** That a plan is too large, in one sentence, with what to do. */
export function planSizeWords({ kind, count }: PlanSizeFault): string {
  return kind === 'cells'
    ? `Levels and ages make ${countOf(count, 'cell')}, and ${writeCount(mostCells)} can be planned: take some away, or make several studies.`
    : `These are ${countOf(count, 'block')}, and ${writeCount(mostBlocks)} can be planned: plan fewer, or make several studies.`
}
