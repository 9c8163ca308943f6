import { expect, it } from 'vitest'
import { numberNotFoundWords, plannedBlockWords } from '#words/programme/findWords.ts'
import { quantitiesIn } from '#words/units/quantities.ts'

const { length } = quantitiesIn('SI')
const group = { adhesive: 'casein C1', jointType: '', gapMm: 0, exposure: 'loft', ageMonths: 12 }
const planned = { kind: 'planned', number: '10015', studyId: 1, studyTitle: 'Loft' } as const

it('says of a planned block what it is to be', () => {
  expect(plannedBlockWords({ ...planned, block: { number: '10015', group } }, length)).toBe(
    '10015 is a planned block of the study "Loft" that is not glued yet: casein C1, tight joint, loft, 1 year.',
  )
  expect(
    plannedBlockWords({ ...planned, block: { number: '10015', group: { ...group, ageMonths: null } } }, length),
  ).toMatch(/, spare\.$/)
})

it('tells a wrong check digit from a number that there is not', () => {
  expect(numberNotFoundWords('10008', { kind: 'none', wrongCheck: true, nearest: ['10007'] })).toBe(
    '10008 is no number of a block: its check digit does not fit. Nearest that there are:',
  )
  expect(numberNotFoundWords('K-9', { kind: 'none', wrongCheck: false, nearest: [] })).toBe(
    'There is no block with the number K-9.',
  )
})
