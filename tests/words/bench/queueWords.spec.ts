import { expect, test } from 'vitest'
import { noneWaitingWords, waitingCountWords } from '#words/bench/queueWords.ts'

test('the queue is said once: how many wait, or that none does', () => {
  expect(waitingCountWords(1)).toBe('1 specimen waiting')
  expect(waitingCountWords(11)).toBe('11 specimens waiting')
  expect(noneWaitingWords).not.toMatch(/\d/)
})
