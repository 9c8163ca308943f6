import { expect, it } from 'vitest'
import {
  blocksNeededWords,
  curveWords,
  planAbout,
  planSentences,
  variationWords,
} from '#words/programme/study/planWords.ts'

const plan = {
  ...{ blocks: 12, groups: 6, cvPercent: 10, confidence: 0.95, power: 0.8, years: 3 },
  ...{ pairPercent: 11.97, anyPercent: 15.2, yearlyPercent: 3.16 },
}

it('says what two groups, all groups and the years can show, and what that rests on', () => {
  const sentences = planSentences(plan)
  expect(sentences).toHaveLength(4)
  expect(sentences[0]).toContain('12 % of the mean is found in 80 % of such studies')
  expect(sentences[1]).toContain('all 6 adhesives: 15 %')
  expect(sentences[2]).toContain('Over 3 years: a steady change of 3.2 % a year')
  expect(sentences[2]).toContain('9.5 % in all')
  expect(sentences[3]).toContain('vary by 10 %')
})

it('says nothing of what cannot be said', () => {
  expect(planSentences({ ...plan, groups: 2, yearlyPercent: null })).toHaveLength(2)
  expect(planSentences({ ...plan, pairPercent: null })).toEqual([
    'With one block a cell no difference between two groups can be told from chance.',
  ])
})

it('writes a change far below one percent with its digits', () => {
  expect(planSentences({ ...plan, yearlyPercent: 0.0412, years: 30 })[2]).toContain('0.041 % a year')
})

it('says where a spread comes from', () => {
  expect(variationWords({ cvPercent: 9.3456, groups: 6, blocks: 61 })).toBe(
    '9.35 % within 6 groups of this archive, from 61 results',
  )
})

it('says what a figure of a plan rests on', () => {
  const terms = { title: 'Loft', confidence: 0.95, power: 0.8 }
  expect(planAbout(terms, 12)).toMatch(/^Study “Loft”\. .*vary by 12 %.* 95 % confidence.* 80 % of such studies\.$/)
  expect(planAbout({ ...terms, title: '' }, 12)).not.toContain('“')
})

it('says how many blocks a difference needs', () => {
  expect(blocksNeededWords(10, 17)).toBe('A difference of 10 % needs 17 blocks a cell.')
  expect(blocksNeededWords(0.001, null)).toContain('more blocks than anybody makes')
})

it('says where the plan stands on the curve', () => {
  expect(curveWords({ blocks: 12, differencePercent: 11.97 })).toContain('As planned, 12 blocks a cell: 12 %.')
  expect(curveWords(null)).not.toContain('planned')
})
