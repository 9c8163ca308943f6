import { expect, it } from 'vitest'
import { specimenFields } from '#contract/specimens/specimen.ts'
import { specimenWords } from '#words/specimens/specimenWords.ts'

it('says what tells a specimen from others, and passes over what was not entered', () => {
  const fields = specimenFields.parse({ number: 'C1-LL-03', adhesive: 'casein C1', exposure: 'loft' })
  expect(specimenWords(fields)).toBe('casein C1 · loft')
  expect(specimenWords({ ...fields, jointType: 'long grain', exposure: '' })).toBe('casein C1 · long grain')
})
