import { expect, it } from 'vitest'
import { pullProcedures } from '#contract/programme/pullProcedures.ts'
import { isTouched } from '#contract/topics.ts'

const { reads } = pullProcedures['pulls.list']

it('the pulls of a study are asked for again when it, a specimen or a glue-up was written, and not for another study', () => {
  expect(isTouched(reads({ studyId: 3 }), ['study 3'])).toBe(true)
  expect(isTouched(reads({ studyId: 3 }), ['study 4'])).toBe(false)
  for (const written of ['specimen 12', 'glue-up 1'] as const)
    expect(isTouched(reads({ studyId: 3 }), [written])).toBe(true)
})

it('all pulls are asked for again when any study was written', () => {
  expect(isTouched(reads({ studyId: null }), ['study 4'])).toBe(true)
  expect(isTouched(reads({ studyId: null }), ['weights'])).toBe(false)
})
