import type Database from 'better-sqlite3'
import { beforeEach, describe, expect, it } from 'vitest'
import { findNumber, numberedSpecimens } from '#archive/programme/findNumber.ts'
import { addSpecimen, correctSpecimen } from '#archive/specimens/specimens.ts'
import { addDialReadings } from '#archive/specimens/typedResults.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { glueBlocks, storeBlocks, storeStudy } from '../storedProgramme.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

let database: Database.Database
let studyId = 0
let [glued, planned] = [0, 0]
beforeEach(() => {
  database = archiveInMemory()
  studyId = storeStudy(database)
  // Running numbers 1000 to 1002: labels 10007, 10015, 10023
  const blocks = storeBlocks(database, studyId, [{ running: 1000 }, { running: 1001 }, { running: 1002 }])
  ;[glued] = glueBlocks(database, studyId, [blocks[0]!]) as [number]
  planned = blocks[1]!
})

it('finds the specimen of a label, with blanks in it too', () => {
  for (const typed of ['10007', ' 10007 ', '10 007'])
    expect(findNumber(database, typed)).toEqual({ kind: 'specimen', specimenId: glued, number: labelOf(1000) })
})

it('finds a specimen by the number that people wrote, however they write it', () => {
  const { specimenId } = addSpecimen(database, specimenFields('C1-LL-03'), morning, '')
  for (const typed of ['C1-LL-03', 'c1-ll-03', 'C1–LL–03'])
    expect(findNumber(database, typed)).toEqual({ kind: 'specimen', specimenId, number: 'C1-LL-03' })
})

it('finds an old number of digits alone, which has no check digit', () => {
  const { specimenId } = addSpecimen(database, specimenFields('412'), morning, '')
  expect(findNumber(database, '412')).toEqual({ kind: 'specimen', specimenId, number: '412' })
})

it('finds a specimen by its label after its number was corrected', () => {
  correctSpecimen(database, glued, specimenFields('renamed'), morning, 'bench', 'as on the block')
  expect(findNumber(database, '10007')).toEqual({ kind: 'specimen', specimenId: glued, number: 'renamed' })
})

it('says of a block that nobody glued what it is to be', () => {
  expect(planned).toBeGreaterThan(0)
  expect(findNumber(database, '10015')).toMatchObject({
    ...{ kind: 'planned', number: '10015', studyId, studyTitle: 'Loft and bilge' },
    block: { group: { adhesive: 'casein C1', ageMonths: 0 } },
  })
})

it('says of a list of numbers what each stands for, with area and results', () => {
  const { specimenId } = addSpecimen(database, { ...specimenFields('K-1'), areaMm2: 600 }, morning, '')
  const reading = {
    woodFailurePercent: null,
    failurePattern: null,
    brokenOn: null,
    resolutionN: null,
    readBy: '',
    note: '',
  }
  addDialReadings(database, [{ ...reading, specimenId, peakN: 4800 }], morning, '')
  expect(numberedSpecimens(database, ['k-1', '10015', 'gone'])).toMatchObject([
    { number: 'k-1', found: { kind: 'specimen', specimenId, number: 'K-1' }, areaMm2: 600, timesBroken: 1 },
    { number: '10015', found: { kind: 'planned' }, areaMm2: null, timesBroken: 0 },
    { number: 'gone', found: { kind: 'none' } },
  ])
})

describe('a number that there is not', () => {
  it('with a wrong check digit names the right ones one slip away that there are', () => {
    expect(findNumber(database, '10008')).toEqual({ kind: 'none', wrongCheck: true, nearest: ['10007'] })
    expect(findNumber(database, '10051')).toEqual({ kind: 'none', wrongCheck: true, nearest: ['10015'] })
  })

  it('is said to be none where nothing near is there', () => {
    expect(findNumber(database, '7940')).toEqual({ kind: 'none', wrongCheck: false, nearest: [] })
    expect(findNumber(database, '7941')).toEqual({ kind: 'none', wrongCheck: true, nearest: [] })
    expect(findNumber(database, 'K-99')).toEqual({ kind: 'none', wrongCheck: false, nearest: [] })
  })
})
