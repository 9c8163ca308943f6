import { expect, it } from 'vitest'
import type { StudyFields } from '#contract/programme/study.ts'
import { studyDoubts } from '#domain/programme/study/studyDoubts.ts'
import { madeBoards, madeStudy } from './madeStudy.ts'

const leftOut = (adhesive: string, ageMonths: number | null, exposure = 'bilge') => ({
  ...{ adhesive, jointType: 'lap', gapMm: 0, exposure, ageMonths },
})

it('a plan with enough of everything raises none', () => {
  expect(studyDoubts(madeStudy({ boards: madeBoards(6, 36), referenceAdhesive: 'epoxy E4' }))).toEqual([])
})

it.each<[string, Partial<StudyFields>, unknown]>([
  ['one block a cell', { blocksPerCell: 1 }, { kind: 'one-block-a-cell' }],
  ['boards that give too little', { boards: madeBoards(6, 35) }, { kind: 'boards-short', give: 210, need: 216 }],
  [
    'a reference that is not in it',
    { referenceAdhesive: 'hide glue' },
    { kind: 'reference-unknown', name: 'hide glue' },
  ],
  ['two ages', { agesMonths: [0, 12] }, { kind: 'two-ages', ages: 2 }],
  ['no age of 0', { agesMonths: [3, 12, 24] }, { kind: 'no-start-age' }],
  ['five years without spares', { agesMonths: [0, 12, 60] }, { kind: 'no-spares' }],
  ['a left out cell that it has not', { leftOut: [leftOut('epoxy E4', 6)] }, { kind: 'left-out-unknown', cells: 1 }],
  [
    'a left out series that it has not',
    { leftOut: [leftOut('hide glue', null)] },
    { kind: 'left-out-unknown', cells: 1 },
  ],
])('asks about %s', (_what, changed, doubt) => {
  expect(studyDoubts(madeStudy(changed))).toEqual([doubt])
})

it('says that nothing is left where everything is left out', () => {
  const all = ['casein C1', 'epoxy E4', 'resorcinol R2'].flatMap((one) => [
    leftOut(one, null),
    leftOut(one, null, 'loft'),
  ])
  expect(studyDoubts(madeStudy({ leftOut: all }))).toEqual([{ kind: 'nothing-left' }])
})

it('takes a study of one age for one without ageing', () => {
  expect(studyDoubts(madeStudy({ agesMonths: [3] }))).toEqual([])
})
