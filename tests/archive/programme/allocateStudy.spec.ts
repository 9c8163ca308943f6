import type Database from 'better-sqlite3'
import { beforeEach, expect, it } from 'vitest'
import { storeRecord } from '#archive/core/recordKind.ts'
import { readRecords } from '#archive/core/recordTable.ts'
import { allocateStudy } from '#archive/programme/allocateStudy.ts'
import { addStudy, correctStudy, study } from '#archive/programme/studies.ts'
import { blockKind, labelKind } from '#archive/programme/studyKinds.ts'
import { addSpecimen } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import type { StudyFields } from '#contract/programme/study.ts'
import { labelOf } from '#domain/programme/labels/label.ts'
import { madeBoards, madeStudy } from '#tests/domain/programme/study/madeStudy.ts'
import { archiveInMemory, morning, specimenFields } from '../storedStudy.ts'

let database: Database.Database
beforeEach(() => {
  database = archiveInMemory()
})

const planned = (changed: Partial<StudyFields> = {}) => addStudy(database, madeStudy(changed), morning, 'bench').studyId
const allocate = (studyId: number, isCancelled = () => false, onProgress: (done: number) => void = () => {}) =>
  allocateStudy(database, ({ done }) => onProgress(done), isCancelled, studyId, morning, 'bench')
const blocks = () => readRecords(database, blockKind, 'ORDER BY block_id')

it('gives every block a number that makes a label, a board and a place in the order, all in the ledger', () => {
  const studyId = planned({ boards: madeBoards(6, 40) })
  expect(allocate(studyId)).toEqual({ blocks: 216, first: blocks()[0]!.running, last: blocks().at(-1)!.running })
  expect(blocks().every(({ running, board }) => labelOf(running) !== null && board !== '')).toBe(true)
  expect(new Set(blocks().map(({ running }) => running)).size).toBe(216)
  expect(study(database, studyId).boards.map(({ blocks }) => blocks)).toEqual([36, 36, 36, 36, 36, 36])
  expect(verify(database, () => {}).faults).toEqual([])
})

it('goes on after the highest number of any block or label', () => {
  const { specimenId } = addSpecimen(database, specimenFields('K-1'), morning, 'bench')
  storeRecord(database, labelKind, { running: 500, specimenId, recordedAt: morning, by: 'bench' })
  allocate(planned())
  expect(blocks()[0]!.running).toBeGreaterThan(500)
})

it('gives no block a number that somebody wrote on a specimen: it could not be glued', () => {
  addSpecimen(database, specimenFields('28'), morning, 'bench')
  allocate(planned())
  expect(blocks().map(({ running }) => labelOf(running))).not.toContain('28')
  expect(labelOf(blocks()[0]!.running)).toBe('36')
})

it('of an extended study allocates what is new, and leaves what was planned', () => {
  const studyId = planned()
  allocate(studyId)
  const before = blocks()
  const more = madeStudy({ adhesives: [...madeStudy().adhesives, 'epoxy E5'] })
  correctStudy(database, studyId, more, morning, 'bench', 'a new adhesive')
  expect(allocate(studyId).blocks).toBe(72)
  expect(blocks().slice(0, 216)).toEqual(before)
  expect(
    new Set(
      blocks()
        .slice(216)
        .map(({ adhesive }) => adhesive),
    ),
  ).toEqual(new Set(['epoxy E5']))
})

it('refuses where nothing is left to allocate, or the boards give too little', () => {
  const studyId = planned()
  allocate(studyId)
  expect(() => allocate(studyId)).toThrow(/allocated already/)
  expect(() => allocate(planned({ title: 'Few boards', boards: madeBoards(6, 35) }))).toThrow(
    'The boards have 210 blocks left',
  )
  expect(blocks()).toHaveLength(216)
})

it('tells how far it is, and when it is stopped nothing is stored', () => {
  const studyId = planned({ agesMonths: [0, 3, 6, 9, 12, 18, 24, 30, 36] })
  const told: number[] = []
  expect(() =>
    allocate(
      studyId,
      () => told.length > 1,
      (done) => told.push(done),
    ),
  ).toThrow(/stopped/)
  expect(told).toEqual([0, 500])
  expect(blocks()).toEqual([])
})
