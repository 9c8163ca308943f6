import { expect, it } from 'vitest'
import { gramsWords, litresWords, woodWords } from '#words/programme/study/totalsWords.ts'

it('writes grams, and kilograms from a thousand on', () => {
  expect(gramsWords(864)).toBe('864.0\u00a0g')
  expect(gramsWords(1234)).toBe('1.23\u00a0kg')
})

it('writes room and wood as people measure it', () => {
  expect(litresWords(48_384_000)).toBe('48.4\u00a0litres')
  expect(woodWords({ woodMm: 21_600, woodMm3: 4_320_000 })).toBe(
    '21.6\u00a0m of pieces, without saw cuts, 4.3\u00a0litres',
  )
  expect(woodWords({ woodMm: 21_600, woodMm3: null })).toBe('21.6\u00a0m of pieces, without saw cuts')
  expect(woodWords({ woodMm: null, woodMm3: null })).toBeNull()
})
