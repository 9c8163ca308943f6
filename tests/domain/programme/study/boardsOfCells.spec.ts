import { expect, it } from 'vitest'
import { createRandom } from '#domain/numbers/random.ts'
import { boardsOfCells } from '#domain/programme/study/boardsOfCells.ts'
import { madeBoards } from './madeStudy.ts'

it('gives every cell as many boards as it has blocks', () => {
  const cells = [
    { adhesive: 'casein C1', blocks: 5 },
    { adhesive: 'epoxy E4', blocks: 1 },
    { adhesive: 'casein C1', blocks: 12 },
  ]
  const dealt = boardsOfCells(cells, madeBoards(4, 9), createRandom(1))
  expect(dealt.map(({ length }) => length)).toEqual([5, 1, 12])
})

it('spreads the blocks of a board that gives few over the cells', () => {
  const cells = Array.from({ length: 12 }, () => ({ adhesive: 'casein C1', blocks: 12 }))
  const boards = [{ name: 'small', blocks: 6 }, ...madeBoards(3, 100)]
  for (let seed = 0; seed < 20; seed++) {
    const dealt = boardsOfCells(cells, boards, createRandom(seed))
    const inCell = dealt.map((names) => names.filter((name) => name === 'small').length)
    expect(inCell.reduce((sum, one) => sum + one, 0)).toBe(6)
    expect(Math.max(...inCell)).toBe(1)
  }
})
