import type { StudyFields } from '#contract/programme/study.ts'
import type { Allocated } from './allocation.ts'
import { cellKey, cellsOf, type StudyCell, seriesOf } from './cells.ts'

/** Why a newer version of a study would touch what was allocated. */
export type ExtensionFault =
  | { kind: 'seed' }
  /** Cells with blocks that the newer version does not have. */
  | { kind: 'cells'; cells: number; blocks: number }
  /** Fewer blocks a cell, or spares a series, than are allocated. */
  | { kind: 'fewer-blocks'; allocated: number }
  | { kind: 'fewer-spares'; allocated: number }
  /** A board that blocks are cut from is not named any more, or gives fewer. */
  | { kind: 'board'; name: string; blocks: number }

/** What forbids a newer version of a study: a version may only add to what is allocated. Null: nothing. */
export function extensionFault(before: StudyFields, next: StudyFields, allocated: Allocated): ExtensionFault | null {
  if (allocated.blocks === 0) return null
  if (next.seed !== before.seed) return { kind: 'seed' }
  const planned = new Map(plannedCells(next).map(([cell, blocks]) => [cellKey(cell), blocks]))
  const lost = [...allocated.cells].filter(([key]) => !planned.has(key))
  if (lost.length > 0)
    return { kind: 'cells', cells: lost.length, blocks: lost.reduce((sum, [, blocks]) => sum + blocks, 0) }
  for (const [key, blocks] of allocated.cells)
    if (blocks > planned.get(key)!)
      return { kind: key.startsWith('spares ') ? 'fewer-spares' : 'fewer-blocks', allocated: blocks }
  const gives = new Map(next.boards.map(({ name, blocks }) => [name, blocks]))
  for (const [name, blocks] of allocated.boards)
    if (name !== '' && (gives.get(name) ?? 0) < blocks) return { kind: 'board', name, blocks }
  return null
}

function plannedCells(fields: StudyFields): [StudyCell, number][] {
  return [
    ...cellsOf(fields).map((cell): [StudyCell, number] => [cell, fields.blocksPerCell]),
    ...seriesOf(fields).map((series): [StudyCell, number] => [{ ...series, ageMonths: null }, fields.sparesPerSeries]),
  ]
}
