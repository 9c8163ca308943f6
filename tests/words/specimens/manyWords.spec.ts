import { expect, test } from 'vitest'
import { doneWords } from '#words/specimens/manyWords.ts'

test('says how many were changed, and how many were so already', () => {
  expect(doneWords('move', 12, 12)).toBe('12 moved')
  expect(doneWords('withdrawn', 1, 3)).toBe('1 withdrawn, 2 left as they were')
  expect(doneWords('taken-back', 0, 2)).toBe('0 taken back, 2 left as they were')
})
