import { expect, test } from 'vitest'
import { noLineWords } from '#words/bench/heardWords.ts'

test('a port that sent bytes without a line is not said to have sent nothing', () => {
  expect(noLineWords(0)).toBe('nothing was received')
  expect(noLineWords(123)).toBe('no whole line was received')
})
