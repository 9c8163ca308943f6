import type { Block, StudyFields } from '#contract/programme/study.ts'
import { createRandom, type RandomStream } from '../../numbers/random.ts'
import { shuffled } from '../../numbers/shuffled.ts'
import { type BoardLeft, boardsOfCells } from './boardsOfCells.ts'
import { cellKey, cellsOf, type StudyCell, seriesKey, seriesOf } from './cells.ts'

/** How many blocks of a study are allocated already: of each cell, by `cellKey`, and from each board. */
export type Allocated = { cells: ReadonlyMap<string, number>; boards: ReadonlyMap<string, number>; blocks: number }

/** Nothing yet. */
export const nothingAllocated: Allocated = { cells: new Map(), boards: new Map(), blocks: 0 }

/** A block as it is planned, before it has its number. */
export type PlannedBlock = Pick<
  Block,
  'adhesive' | 'jointType' | 'gapMm' | 'exposure' | 'ageMonths' | 'board' | 'breakingOrder'
>

/** The random part of a place in the breaking order: rounds are so far apart. */
const round = 2 ** 20

/** What a study plans and has not allocated yet, in its order: the cells of each series, its spares last. */
export function cellsToAllocate(
  fields: StudyFields,
  { cells }: Pick<Allocated, 'cells'>,
): { cell: StudyCell; already: number; blocks: number }[] {
  const aged = Map.groupBy(cellsOf(fields), seriesKey)
  return seriesOf(fields)
    .flatMap((series): [StudyCell, number][] => [
      ...(aged.get(seriesKey(series)) ?? []).map((cell): [StudyCell, number] => [cell, fields.blocksPerCell]),
      [{ ...series, ageMonths: null }, fields.sparesPerSeries],
    ])
    .map(([cell, planned]) => {
      const already = cells.get(cellKey(cell)) ?? 0
      return { cell, already, blocks: planned - already }
    })
    .filter(({ blocks }) => blocks > 0)
}

/** The boards of a study that have blocks left, and how many. */
export function boardsLeft({ boards }: Pick<StudyFields, 'boards'>, allocated: Pick<Allocated, 'boards'>): BoardLeft[] {
  return boards
    .map(({ name, blocks }) => ({ name, blocks: blocks - (allocated.boards.get(name) ?? 0) }))
    .filter(({ blocks }) => blocks > 0)
}

/**
 * The blocks of a study that are not allocated yet, in its order, each with its board and its place in the breaking order; the
 * same for the same seed and the same blocks before. Without boards every block has none. Those of a pull are broken in rising
 * order of `breakingOrder`: in rounds of one block of every cell, each round in random order, so that a drift of the bench falls
 * on all cells alike and a pull that is cut short leaves as many of each; blocks that are allocated later are mixed in.
 * Throws RangeError where the boards do not give so many blocks.
 */
export function allocateBlocks(fields: StudyFields, allocated: Allocated): PlannedBlock[] {
  const random = createRandom(fields.seed, allocated.blocks)
  const open = cellsToAllocate(fields, allocated)
  const cut = open.map(({ cell, blocks }) => ({ adhesive: cell.adhesive, blocks }))
  const boards =
    fields.boards.length === 0
      ? open.map(({ blocks }) => Array<string>(blocks).fill(''))
      : boardsOfCells(cut, boardsLeft(fields, allocated), random)
  return open.flatMap(({ cell, already }, index) => {
    const orders = breakingOrders(already, boards[index]!.length, random)
    return boards[index]!.map((board, block) => ({ ...cell, board, breakingOrder: orders[block]! }))
  })
}

/** One place in each of so many rounds, the rounds in random order over the blocks. */
function breakingOrders(from: number, count: number, random: RandomStream): number[] {
  const rounds = Array.from({ length: count }, (_, index) => from + index)
  return shuffled(rounds, random).map((one) => one * round + random.wholeBetween(0, round - 1))
}
