import { describe, expect, it } from 'vitest'
import { boardsText, readBoards, withMoreBoards } from '#renderer/pages/programme/studies/plan/boardText.ts'

describe('boards that are typed', () => {
  it('are a name and a number on each line, however they are parted', () => {
    expect(readBoards('plank 1: 60\n\nplank 2\t72\nthe third = 5').boards).toEqual([
      { name: 'plank 1', blocks: 60 },
      { name: 'plank 2', blocks: 72 },
      { name: 'the third', blocks: 5 },
    ])
  })

  it.each([
    ['plank', /^Line 2, “plank”: write the name/],
    ['plank 2: 0', /^Line 2.*write the name/],
    ['plank 1: 7', /twice/],
    ['plank 2: 100001', /no board gives so many/],
    [`${'p'.repeat(201)}: 7`, /too long/],
  ])('name the line of what is wrong: %s', (wrong, message) => {
    expect(readBoards(`plank 1: 60\n${wrong}`).error).toMatch(message)
  })

  it('come out as they went in', () => {
    const boards = [{ name: 'plank 1', blocks: 60 }]
    expect(readBoards(boardsText(boards)).boards).toEqual(boards)
  })
})

it('more boards get the next free numbers', () => {
  expect(withMoreBoards('board 2: 9\n', 'board', 2, 60)).toBe('board 2: 9\nboard 1: 60\nboard 3: 60')
  expect(withMoreBoards('', 'plank', 1, 5)).toBe('plank 1: 5')
})
