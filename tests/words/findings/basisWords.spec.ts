import { expect, it } from 'vitest'
import { basisSentence, changedMethod, methodWords } from '#words/findings/basisWords.ts'

const summaries = [
  { n: 12, excluded: 0 },
  { n: 11, excluded: 1 },
  { n: 0, excluded: 2 },
]

it('says how many blocks of how many groups count, and how many a person left out', () => {
  const terms = { age: '6 months old', treatment: 'as observed', method: methodWords['torn-wood'] }
  expect(basisSentence(summaries, terms)).toBe(
    '23 blocks (3 left out) in 2 groups, 6 months old, torn wood as observed; places by the means alone.',
  )
  expect(basisSentence([{ n: 1, excluded: 0 }], terms)).toMatch(/^1 block in 1 group, /)
})

it('says how surely every answer is found', () => {
  for (const asked of ['strongest', 'as-good', 'overall'] as const) expect(methodWords[asked]).toContain('95 %')
  expect(changedMethod(null)).toContain('95 %')
  expect(changedMethod('censored')).toMatch(/, lines with torn wood censored$/)
})
