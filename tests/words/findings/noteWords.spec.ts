import { expect, it } from 'vitest'
import { noteCode } from '#contract/findings/lines.ts'
import { noteText } from '#words/findings/noteWords.ts'

const note = { kind: 'note', about: 'group-summary' } as const

it('names the group and the age', () => {
  expect(noteText({ ...note, code: 'one-block', group: 'Hide glue', ageMonths: 12 })).toMatch(
    /^Hide glue, 12 months: one block/,
  )
  expect(noteText({ ...note, code: 'few-groups', group: null, ageMonths: null })).toMatch(/^fewer than four groups/)
})

it.each(noteCode.options)('has a sentence for %s', (code) => {
  expect(noteText({ ...note, code, group: null, ageMonths: null })).toMatch(/^\w.{10,}\.$/)
})
