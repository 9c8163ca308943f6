import type { AllocationDone } from '#contract/programme/studyRecord.ts'
import type { Progress } from '#contract/tasks.ts'
import { allocateBlocks, boardsLeft, cellsToAllocate } from '#domain/programme/study/allocation.ts'
import type { Database } from '../core/database.ts'
import { storeRecord } from '../core/recordKind.ts'
import { conflict, stopped } from '../core/recordTrouble.ts'
import { inTransaction } from '../core/transaction.ts'
import { allocatedOf } from './blockCounts.ts'
import { takeRunning } from './runningNumbers.ts'
import { newestStudy, refuseLargePlan } from './studies.ts'
import { blockKind } from './studyKinds.ts'

/** Between two tellings of how far it is. */
const toldEvery = 500

/**
 * Gives every block that a study plans and that has none its number, its board and its place in the breaking order: all or
 * nothing, for the allocation is random as a whole. What was allocated before stays. Throws the trouble "conflict" where nothing
 * is left to allocate or the boards give too few blocks, "invalid-input" where the plan is too large, "cancelled" when it is stopped.
 */
export function allocateStudy(
  database: Database,
  onProgress: (progress: Progress) => void,
  isCancelled: () => boolean,
  studyId: number,
  recordedAt: string,
  by: string,
): AllocationDone {
  return inTransaction(database, () => {
    const { fields } = newestStudy(database, studyId)
    refuseLargePlan(fields)
    const allocated = allocatedOf(database, studyId)
    const need = cellsToAllocate(fields, allocated).reduce((sum, { blocks }) => sum + blocks, 0)
    if (need === 0)
      throw conflict('Every block of the plan is allocated already.', 'Add levels, ages or blocks to the study first.')
    const give = boardsLeft(fields, allocated).reduce((sum, { blocks }) => sum + blocks, 0)
    if (fields.boards.length > 0 && give < need)
      throw conflict(
        `The boards have ${give} blocks left, and ${need} are to be cut.`,
        'Name another board or plan fewer blocks; a study without boards is not allocated to any.',
      )
    const runnings = takeRunning(database, need)
    for (const [index, block] of allocateBlocks(fields, allocated).entries()) {
      if (index % toldEvery === 0) {
        onProgress({ task: 'allocation', done: index, total: need })
        if (isCancelled()) throw stopped('The allocation was stopped; no block was allocated.')
      }
      storeRecord(database, blockKind, { studyId, recordedAt, by, running: runnings[index]!, ...block })
    }
    return { blocks: need, first: runnings[0]!, last: runnings.at(-1)! }
  })
}
