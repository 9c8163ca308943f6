import { expect, it } from 'vitest'
import { zeroFoundWords } from '#words/breaks/zeroWords.ts'

it('says what was taken off and what that is the mean of', () => {
  expect(zeroFoundWords({ offsetN: -1.234, readings: 80 })).toBe(
    '−1.23 N taken off, the mean of 80 steady readings before the load',
  )
})
