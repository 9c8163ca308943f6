import { expect, test } from 'vitest'
import { writtenOfGlueUp, writtenOfSpecimen, writtenOfStudy } from '#archive/catalogue/written.ts'
import { glueUpFields } from '#contract/programme/glueUp.ts'
import { studyFields } from '#contract/programme/study.ts'
import { specimenFields } from '../storedStudy.ts'

test('a lot is named within its adhesive, and a board within its wood', () => {
  const { lot, board, place } = writtenOfSpecimen(specimenFields('A-1', { wood: 'beech', board: 'B3' }))
  expect(lot).toEqual({ kind: 'lot', name: 'C1-2031-a', of: 'casein C1' })
  expect(board).toEqual({ kind: 'board', name: 'B3', of: 'beech' })
  expect(place).toEqual({ kind: 'place', name: 'shelf 2', of: '' })
})

test('a study names its factors and its wood', () => {
  const study = studyFields.parse({
    ...{ title: 'bilge', adhesives: ['casein C1', 'epoxy E4'], jointTypes: ['lap'], gapsMm: [0], exposures: ['loft'] },
    ...{ agesMonths: [0], blocksPerCell: 12, wood: 'beech', boards: [{ name: 'B3', blocks: 8 }], seed: 1 },
  })
  expect(writtenOfStudy(study).map(({ kind, name, of }) => [kind, name, of])).toEqual([
    ['adhesive', 'casein C1', ''],
    ['adhesive', 'epoxy E4', ''],
    ['joint-type', 'lap', ''],
    ['exposure', 'loft', ''],
    ['wood', 'beech', ''],
    ['board', 'B3', 'beech'],
  ])
})

test('a glue-up names its lots with their adhesives', () => {
  const fields = glueUpFields.parse({ gluedOn: '2031-03-01', lots: [{ adhesive: 'epoxy E4', lot: '7' }] })
  expect(writtenOfGlueUp(fields)).toEqual([
    { kind: 'adhesive', name: 'epoxy E4', of: '' },
    { kind: 'lot', name: '7', of: 'epoxy E4' },
  ])
})
