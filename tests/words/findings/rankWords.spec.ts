import { expect, it } from 'vitest'
import { rankFigureWords, rankReadingWords, rankWords } from '#words/findings/rankWords.ts'

const e4 = { name: 'E4', rank: 1, low: 1, high: 2, firstShare: 0.625 }
const r2 = { name: 'R2', rank: 2, low: 1, high: 2, firstShare: 0.375 }

it('says the place by the mean and those that are possible', () => {
  expect(rankWords(e4, 6)).toBe('E4: 1 of 6 by its mean, places 1 to 2 possible')
  expect(rankWords({ ...e4, high: 1 }, 6)).toBe('E4: 1 of 6 by its mean, place 1 alone possible')
  expect(rankReadingWords(e4, 6)).toMatch(/; first in 63 % of the resamplings$/)
})

it('calls one the strongest only where no other can be', () => {
  expect(rankFigureWords([e4, r2])).toMatch(/^2 groups can be the strongest\. E4: 1 of 2/)
  expect(
    rankFigureWords([
      { ...e4, high: 1 },
      { ...r2, low: 2 },
    ]),
  ).toMatch(/^E4 alone can be the strongest\./)
  const seldom = Array.from({ length: 40 }, (_, i) => ({ ...r2, rank: i + 2, low: 2, high: 41, firstShare: 0.0125 }))
  expect(rankFigureWords([{ ...e4, high: 5, firstShare: 0.5 }, ...seldom])).toMatch(
    /^None of 41 groups is surely the strongest/,
  )
  expect(rankFigureWords([])).toBe('No group can be ranked.')
})
