import { expect, test } from 'vitest'
import { studyFields } from '#contract/programme/study.ts'

const fields = {
  title: 'Which adhesive for the bilge?',
  adhesives: ['casein C1', 'epoxy E4'],
  jointTypes: ['long grain to long grain'],
  gapsMm: [0],
  exposures: ['loft', 'bilge'],
  agesMonths: [0, 3, 6],
  blocksPerCell: 12,
  seed: 1,
}

test('is understood with nothing but its factors, its blocks a cell and its seed', () => {
  expect(studyFields.parse(fields)).toMatchObject({ sparesPerSeries: 0, referenceAdhesive: null, windowDays: 7 })
})

test.each([
  ['ages out of order', { agesMonths: [0, 6, 3] }],
  ['an age twice', { agesMonths: [0, 6, 6] }],
  ['an adhesive twice', { adhesives: ['casein C1', 'casein C1'] }],
  ['no adhesive', { adhesives: [] }],
  ['half a month', { agesMonths: [0.5] }],
])('does not take %s', (_name, change) => {
  expect(studyFields.safeParse({ ...fields, ...change }).success).toBe(false)
})
