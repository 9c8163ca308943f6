import { expect, test } from 'vitest'
import { listSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimen, addSpecimens, correctSpecimen, specimenRevisions } from '#archive/specimens/specimens.ts'
import { listQuery } from '#contract/listQuery.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

test('gives back exactly the fields that were given', () => {
  const database = archiveInMemory()
  const fields = specimenFields('C1-LL-1', { areaMm2: 601.25, bondLineGapMm: null, notes: 'knot\nbeside "the" bond ü' })
  const added = addSpecimen(database, fields, morning, 'bench')
  expect(added).toEqual({ specimenId: 1, revision: 1, recordedAt: morning, by: 'bench', reason: '', fields })
  expect(specimenRevisions(database, 1)).toEqual([added])
})

test('lays a correction over the first version, which stays', () => {
  const database = archiveInMemory()
  addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  const corrected = correctSpecimen(
    database,
    1,
    specimenFields('C1-LL-01', { areaMm2: 590 }),
    morning,
    'bench',
    'measured again',
  )
  expect(corrected).toMatchObject({ specimenId: 1, revision: 2, reason: 'measured again' })
  expect(specimenRevisions(database, 1).map((revision) => revision.fields.areaMm2)).toEqual([600, 590])
  expect(listSpecimens(database, listQuery.parse({})).rows.map((row) => row.fields.number)).toEqual(['C1-LL-01'])
})

test('takes a number that looks like one that is there for the same number', () => {
  const database = archiveInMemory()
  addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  for (const lookalike of ['C1-LL-1\u200b', 'C1\u2011LL\u20111', '\uff231-LL-1'])
    expect(() => addSpecimen(database, specimenFields(lookalike), morning, 'bench')).toThrow(/already/)
  addSpecimen(database, specimenFields('C1-LL-01'), morning, 'bench')
})

test('adds all or none when a number is taken, and names it', () => {
  const database = archiveInMemory()
  addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  const list = [specimenFields('C1-LL-2'), specimenFields('c1-ll-1')]
  expect(() => addSpecimens(database, list, morning, 'bench')).toThrow(/c1-ll-1 already/)
  expect(() => addSpecimens(database, [list[0]!, list[0]!], morning, 'bench')).toThrow(/C1-LL-2 already/)
  expect(listSpecimens(database, listQuery.parse({})).total).toBe(1)
  expect(database.prepare("SELECT count(*) FROM ledger WHERE kind = 'specimen'").pluck().get()).toBe(1)
})

test('lets a number go when its specimen is corrected to another', () => {
  const database = archiveInMemory()
  addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  correctSpecimen(database, 1, specimenFields('C1-LL-9'), morning, 'bench', 'misread')
  expect(addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench').specimenId).toBe(2)
})

test('says that a specimen is not there', () => {
  const database = archiveInMemory()
  expect(() => correctSpecimen(database, 7, specimenFields('X'), morning, 'bench', 'why')).toThrow(
    'There is no specimen 7 in this archive.',
  )
})
