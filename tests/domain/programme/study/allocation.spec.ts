import { describe, expect, it } from 'vitest'
import type { StudyFields } from '#contract/programme/study.ts'
import { createRandom } from '#domain/numbers/random.ts'
import {
  type Allocated,
  allocateBlocks,
  cellsToAllocate,
  nothingAllocated,
  type PlannedBlock,
} from '#domain/programme/study/allocation.ts'
import { cellKey } from '#domain/programme/study/cells.ts'
import { madeBoards, madeStudy } from './madeStudy.ts'

const countBy = <One>(list: readonly One[], keyOf: (one: One) => string) => {
  const counts = new Map<string, number>()
  for (const one of list) counts.set(keyOf(one), (counts.get(keyOf(one)) ?? 0) + 1)
  return counts
}

const allocatedIn = (blocks: readonly PlannedBlock[]): Allocated => ({
  cells: countBy(blocks, cellKey),
  boards: countBy(blocks, ({ board }) => board),
  blocks: blocks.length,
})

/** Largest minus smallest count over the boards, 0 for one that is not used. */
const unevenness = (blocks: readonly PlannedBlock[], boards: StudyFields['boards']) => {
  const counts = boards.map(({ name }) => blocks.filter(({ board }) => board === name).length)
  return Math.max(...counts) - Math.min(...counts)
}

const groupsOf = (blocks: readonly PlannedBlock[], keyOf: (one: PlannedBlock) => string) => [
  ...Map.groupBy(blocks, keyOf).values(),
]

describe('blocks and boards', () => {
  it('every cell gets its blocks and every series its spares, in the order of the study', () => {
    const blocks = allocateBlocks(madeStudy({ sparesPerSeries: 2 }), nothingAllocated)
    expect(blocks).toHaveLength(3 * 2 * (3 * 12 + 2))
    expect([...new Set(blocks.slice(0, 40).map(({ ageMonths }) => ageMonths))]).toEqual([0, 3, 12, null])
    expect(blocks.every(({ board }) => board === '')).toBe(true)
  })

  it('every adhesive is spread over the boards so that their counts differ by one at most, and so is every cell', () => {
    const random = createRandom(11)
    for (let draw = 0; draw < 25; draw++) {
      const boards = madeBoards(random.wholeBetween(1, 20), 1000)
      const study = madeStudy({ boards, seed: draw, blocksPerCell: random.wholeBetween(1, 13), sparesPerSeries: 1 })
      const blocks = allocateBlocks(study, nothingAllocated)
      expect(unevenness(blocks, boards)).toBeLessThanOrEqual(1)
      for (const group of groupsOf(blocks, ({ adhesive }) => adhesive))
        expect(unevenness(group, boards)).toBeLessThanOrEqual(1)
      for (const group of groupsOf(blocks, cellKey)) expect(unevenness(group, boards)).toBeLessThanOrEqual(1)
    }
  })

  it('a board that gives little gives every adhesive its part, and no board gives more than it has', () => {
    const random = createRandom(12)
    for (let draw = 0; draw < 25; draw++) {
      const boards = madeBoards(6, 30).map((board) => ({ ...board, blocks: random.wholeBetween(1, 60) }))
      boards.push({ name: 'last', blocks: 220 })
      const blocks = allocateBlocks(madeStudy({ boards, seed: draw }), nothingAllocated)
      for (const { name, blocks: gives } of boards) {
        const counts = groupsOf(blocks, ({ adhesive }) => adhesive).map(
          (group) => group.filter(({ board }) => board === name).length,
        )
        expect(counts.reduce((sum, one) => sum + one, 0)).toBeLessThanOrEqual(gives)
        // All three adhesives have as many blocks
        expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1)
      }
    }
  })

  it('boards that give just as many blocks as are wanted are used up', () => {
    const boards = madeBoards(4, 54)
    const blocks = allocateBlocks(madeStudy({ boards }), nothingAllocated)
    expect([...countBy(blocks, ({ board }) => board).values()]).toEqual([54, 54, 54, 54])
  })

  it('refuses boards that do not give enough', () => {
    expect(() => allocateBlocks(madeStudy({ boards: madeBoards(3, 10) }), nothingAllocated)).toThrow(RangeError)
  })

  it('is the same for the same seed, and another for another', () => {
    const study = madeStudy({ boards: madeBoards(5, 100) })
    expect(allocateBlocks(study, nothingAllocated)).toEqual(allocateBlocks(study, nothingAllocated))
    expect(allocateBlocks({ ...study, seed: 8 }, nothingAllocated)).not.toEqual(allocateBlocks(study, nothingAllocated))
  })

  it('over many seeds every board is as likely for a block as any other (chi-square with 4 degrees of freedom, 0.1 % point 18.47)', () => {
    // Source of the limit: NIST/SEMATECH e-Handbook 1.3.6.7.4, table of the chi-square distribution.
    const boards = madeBoards(5, 100)
    const small = { boards, adhesives: ['casein C1'], exposures: ['loft'], agesMonths: [0], blocksPerCell: 2 }
    const seen = Array.from({ length: 2000 }, (_, seed) =>
      allocateBlocks(madeStudy({ ...small, seed }), nothingAllocated),
    )
    const counts = [
      ...countBy(
        seen.map((blocks) => blocks[0]!),
        ({ board }) => board,
      ).values(),
    ]
    expect(counts.reduce((sum, one) => sum + (one - 400) ** 2 / 400, 0)).toBeLessThan(18.47)
  })
})

describe('the breaking order', () => {
  const pull = allocateBlocks(madeStudy(), nothingAllocated)
    .filter(({ ageMonths }) => ageMonths === 3)
    .toSorted((one, other) => one.breakingOrder - other.breakingOrder)

  it('takes one block of every cell before it takes a second of any', () => {
    for (let start = 0; start < pull.length; start += 6)
      expect(new Set(pull.slice(start, start + 6).map(cellKey)).size).toBe(6)
  })

  it('takes them in another order in each round', () => {
    const orders = Array.from({ length: 12 }, (_, round) =>
      pull
        .slice(6 * round, 6 * round + 6)
        .map(cellKey)
        .join(),
    )
    expect(new Set(orders).size).toBeGreaterThan(8)
  })
})

describe('an extension', () => {
  const boards = madeBoards(8, 60)
  const before = madeStudy({ boards })
  const planned = allocateBlocks(before, nothingAllocated)
  const after = madeStudy({ boards, adhesives: [...before.adhesives, 'epoxy E5'], agesMonths: [0, 3, 12, 24] })
  const added = allocateBlocks(after, allocatedIn(planned))

  it('allocates what is new and nothing else', () => {
    expect(added).toHaveLength(4 * 2 * 4 * 12 - planned.length)
    expect(added.every(({ adhesive, ageMonths }) => adhesive === 'epoxy E5' || ageMonths === 24)).toBe(true)
    expect(cellsToAllocate(after, allocatedIn([...planned, ...added]))).toEqual([])
  })

  it('spreads a new adhesive over the boards as any other', () => {
    const own = added.filter(({ adhesive }) => adhesive === 'epoxy E5')
    expect(unevenness(own, boards)).toBeLessThanOrEqual(1)
  })

  it('takes no more from a board than it has left', () => {
    for (const [name, count] of allocatedIn([...planned, ...added]).boards)
      expect(count).toBeLessThanOrEqual(boards.find((board) => board.name === name)!.blocks)
  })

  it('mixes new blocks into the order of a pull that is planned already', () => {
    const pull = [...planned, ...added].filter(({ ageMonths }) => ageMonths === 3)
    const order = pull.toSorted((one, other) => one.breakingOrder - other.breakingOrder)
    for (let start = 0; start < order.length; start += 8)
      expect(new Set(order.slice(start, start + 8).map(cellKey)).size).toBe(8)
  })

  it('of more blocks a cell allocates the missing ones, in rounds of their own', () => {
    const more = allocateBlocks({ ...before, blocksPerCell: 14, boards: madeBoards(8, 80) }, allocatedIn(planned))
    expect(more).toHaveLength(18 * 2)
    const last = Math.max(...planned.map(({ breakingOrder }) => breakingOrder))
    expect(more.every(({ breakingOrder }) => breakingOrder > last - 2 ** 20)).toBe(true)
  })
})

it('a hundred thousand blocks are allocated', () => {
  const names = (what: string, count: number) => Array.from({ length: count }, (_, index) => `${what} ${index}`)
  const boards = madeBoards(200, 700)
  const study = madeStudy({
    adhesives: names('adhesive', 50),
    exposures: names('exposure', 5),
    agesMonths: [...Array(20).keys()],
    blocksPerCell: 20,
    boards,
  })
  expect(allocateBlocks(study, nothingAllocated)).toHaveLength(100_000)
})
