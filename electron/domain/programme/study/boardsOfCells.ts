import type { StudyFields } from '#contract/programme/study.ts'
import type { RandomStream } from '../../numbers/random.ts'
import { roundedTable } from '../../numbers/roundedTable.ts'
import { shuffled } from '../../numbers/shuffled.ts'
import { evenShares } from './evenShares.ts'

/** Blocks that are still to be cut for a cell. */
export type CellToCut = { adhesive: string; blocks: number }

/** A board, and how many more blocks it gives. */
export type BoardLeft = StudyFields['boards'][number]

/**
 * The boards of the blocks of each cell, in the order of the cells. Blocks are taken from the boards evenly; every adhesive gets
 * its share of every board, rounded up or down, and so does every cell of it.
 * Throws RangeError where the boards do not give so many.
 */
export function boardsOfCells(
  cells: readonly CellToCut[],
  boards: readonly BoardLeft[],
  random: RandomStream,
): string[][] {
  const dealt = cells.map((): string[] => [])
  const byAdhesive = [...Map.groupBy(cells.keys(), (index) => cells[index]!.adhesive).values()]
  const wanted = byAdhesive.map((indices) => indices.reduce((sum, index) => sum + cells[index]!.blocks, 0))
  const all = wanted.reduce((sum, blocks) => sum + blocks, 0)
  const gives = boards.map(({ blocks }) => blocks)
  const { numerators, denominator } = evenShares(gives, all)
  const shares = { numerators, denominator: denominator * all }
  const fair = wanted.map((blocks) => numerators.map((share) => share * blocks))
  for (const [row, counts] of roundedTable(fair, shares.denominator, random).entries()) {
    const indices = shuffled(byAdhesive[row]!, random)
    const dealtHere = dealOut(
      counts,
      indices.map((index) => cells[index]!.blocks),
      shares,
      random,
    )
    for (const [place, index] of indices.entries())
      dealt[index] = shuffled(dealtHere[place]!, random).map((board) => boards[board]!.name)
  }
  return dealt
}

type Shares = { numerators: readonly number[]; denominator: number }

/**
 * Deals boards, each as often as it counts, out to cells of so many blocks: to each the whole part of its share of every board,
 * and what is left of the boards to those cells that still want blocks, from the boards of which most is left.
 */
function dealOut(
  counts: readonly number[],
  blocks: readonly number[],
  { numerators, denominator }: Shares,
  random: RandomStream,
): number[][] {
  const whole = blocks.map((wanted) => numerators.map((share) => Math.floor((wanted * share) / denominator)))
  const left = counts.map((count, board) => count - whole.reduce((sum, cell) => sum + cell[board]!, 0))
  return blocks.map((wanted, cell) => {
    const taken = whole[cell]!.flatMap((count, board) => Array<number>(count).fill(board))
    while (taken.length < wanted) {
      const most = shuffled([...left.keys()], random)
        .filter((board) => left[board]! > 0)
        .sort((one, other) => left[other]! - left[one]!)
        .slice(0, wanted - taken.length)
      for (const board of most) left[board]! -= 1
      taken.push(...most)
    }
    return taken
  })
}
