import { describe, expect, it } from 'vitest'
import { typedBlocks, withBoards, withMoreBoards } from '#renderer/pages/programme/studies/plan/boardList.ts'

const first = [{ name: 'plank 1', blocks: 60 }]

describe('boards that are entered', () => {
  it('give what stands behind their names, and else as many as is usual', () => {
    expect(withBoards(first, ['plank 2', 'plank 3: 72', 'the third = 5'], '48')).toEqual({
      boards: [
        ...first,
        { name: 'plank 2', blocks: 48 },
        { name: 'plank 3', blocks: 72 },
        { name: 'the third', blocks: 5 },
      ],
    })
  })

  it('may come as two cells each from a sheet', () => {
    expect(withBoards([], ['plank 1', '60', 'plank 2', '72'], '')).toEqual({
      boards: [...first, { name: 'plank 2', blocks: 72 }],
    })
  })

  it.each([
    [['plank 2'], /^Say how many blocks plank 2 gives/],
    [['plank 2: 0'], /^Say how many blocks plank 2 gives/],
    [['plank 2: 100001'], /from 1 to 100,000/],
    [['plank 1: 7'], /^plank 1 is in the list already/],
    [['plank 2: 7', 'plank 2: 7'], /^plank 2 is in the list already/],
    [[': 7'], /^Write the name/],
    [[`${'p'.repeat(201)}: 7`], /200 characters/],
  ])('are refused with what is wrong: %s', (texts, message) => {
    expect(withBoards(first, texts, '')).toEqual({ error: expect.stringMatching(message) })
  })
})

it('reads how many blocks a board gives', () => {
  expect(['60', ' 7 ', '0', '-1', '1.5', '100001', ''].map(typedBlocks)).toEqual([60, 7, null, null, null, null, null])
})

it('more boards get the next free numbers', () => {
  expect(withMoreBoards([{ name: 'board 2', blocks: 9 }], 'board', 2, 60)).toEqual([
    { name: 'board 2', blocks: 9 },
    { name: 'board 1', blocks: 60 },
    { name: 'board 3', blocks: 60 },
  ])
})
