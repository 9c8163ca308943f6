import type Database from 'better-sqlite3'
import { expect, it } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { reads } from '#archive/methods.ts'
import { mergeCatalogueEntries } from '#archive/programme/catalogue.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { decideTypedResult } from '#archive/specimens/typedResults.ts'
import { overviewFilter } from '#contract/findings/overview.ts'
import { overviewGroups } from '#domain/findings/overview/overviewGroups.ts'
import { pulledStudy } from '../pulledStudy.ts'
import { importBlocks, readBlock } from '../storedImport.ts'
import { glueBlocks, storeBlocks, storeStudy } from '../storedProgramme.ts'
import { archiveInMemory, morning, rampAndFall, specimenFields, storeBreak } from '../storedStudy.ts'

const look = (database: Database.Database, filter: object = {}) =>
  overviewGroups(reads.overview(database, overviewFilter.parse(filter)))
const blocksOf = (database: Database.Database, filter: object = {}) =>
  look(database, filter).flatMap(({ blocks }) => blocks)

function setAside(database: Database.Database, breakId: number, cause: 'other' | 'wrong-block'): void {
  const signed = { recordedAt: morning, by: 'bench', reason: 'slipped' }
  addDecision(database, { breakId, ...signed, kind: 'set-aside', specimenId: null, cause })
}

it('holds every block of a study: broken, on the shelf, lost and not glued yet, at its age', () => {
  const database = archiveInMemory()
  const { studyId } = pulledStudy(database)
  storeBlocks(database, studyId, [{ ageMonths: 12 }])
  const groups = look(database, { studyId })
  expect(groups.map(({ ageMonths, blocks }) => [ageMonths, blocks.map(({ state }) => state)])).toEqual([
    [6, ['lost', 'waiting', 'waiting']],
    // Broken on 2 May 2031, which is when they were broken and not when it was planned
    [8, ['curve', 'curve', 'curve']],
    [12, ['waiting', 'waiting', 'waiting', 'planned']],
    [null, ['waiting', 'waiting']],
  ])
  expect(groups[1]!.blocks.map(({ breakId, strengthMPa }) => [breakId, strengthMPa])).toEqual([
    [1, 10],
    [2, 10],
    [3, 10],
  ])
})

it('looks at the blocks of the study that is asked for alone, and at all without one', () => {
  const database = archiveInMemory()
  pulledStudy(database)
  const other = storeStudy(database)
  const [specimenId] = glueBlocks(database, other, storeBlocks(database, other, [{}, {}]).slice(0, 1))
  addSpecimens(database, [specimenFields('own')], morning, 'bench')
  expect(blocksOf(database, { studyId: other }).map((block) => [block.specimenId, block.state])).toEqual([
    [specimenId, 'waiting'],
    [null, 'planned'],
  ])
  expect(blocksOf(database)).toHaveLength(11 + 2 + 1)
})

it('shows what was set aside at its strength, but not the break of another block', () => {
  const database = archiveInMemory()
  addSpecimens(
    database,
    ['A', 'B', 'C'].map((number) => specimenFields(number)),
    morning,
    'bench',
  )
  for (const specimenId of [1, 2, 3]) storeBreak(database, specimenId, rampAndFall(100, 360_000))
  setAside(database, 1, 'other')
  setAside(database, 2, 'wrong-block')
  const found = blocksOf(database).toSorted((one, two) => one.number.localeCompare(two.number))
  expect(found.map(({ number, state, breakId, strengthMPa }) => [number, state, breakId, strengthMPa])).toEqual([
    ['A', 'excluded', 1, 6],
    ['B', 'waiting', null, null],
    ['C', 'curve', 3, 6],
  ])
})

it('marks results without a curve, with the age they were given; one that was set aside is left out, at its age', () => {
  const database = archiveInMemory()
  importBlocks(database, [
    readBlock(2, { number: 'A', peakN: 3000, gluedOn: '2020-03-01', brokenOn: '2021-03-01', woodFailurePercent: 30 }),
    readBlock(3, { number: 'B', peakN: 4200, ageMonths: 24, gluedOn: '2020-03-01' }),
    readBlock(4, { number: 'C', areaMm2: null, peakN: null, strengthMPa: 8 }),
    readBlock(5, { number: 'D', peakN: 600, ageMonths: 36 }),
    readBlock(6, { number: 'E', peakN: 600 }),
  ])
  decideTypedResult(database, {
    ...{ typedResultId: 4, recordedAt: morning, by: 'bench', reason: 'a typing error', kind: 'set-aside' },
  })
  decideTypedResult(database, {
    ...{ typedResultId: 5, recordedAt: morning, by: 'bench', reason: 'no such block', kind: 'set-aside' },
    cause: 'wrong-block',
  })
  const found = look(database).flatMap(({ ageMonths, blocks }) =>
    blocks.map(({ number, state, strengthMPa, woodFailurePercent }) => [
      number,
      ageMonths,
      state,
      strengthMPa,
      woodFailurePercent,
    ]),
  )
  expect(found).toEqual([
    ['A', 12, 'peak-only', 5, 30],
    ['B', 24, 'peak-only', 7, null],
    ['D', 36, 'excluded', 1, null],
    ['C', null, 'peak-only', 8, null],
    ['E', null, 'lost', null, null],
  ])
})

it('tells a broken block of unknown area from one that waits', () => {
  const database = archiveInMemory()
  const noArea = { areaMm2: null, overlapLengthMm: null, overlapWidthMm: null }
  addSpecimens(database, [specimenFields('A', noArea)], morning, 'bench')
  storeBreak(database, 1)
  expect(blocksOf(database)).toEqual([expect.objectContaining({ state: 'curve', breakId: 1, strengthMPa: null })])
})

it('groups under the names that the catalogue has now, blocks that are not glued too', () => {
  const database = archiveInMemory()
  const studyId = storeStudy(database, { adhesives: ['casein C1'] })
  storeBlocks(database, studyId, [{}])
  const fields = [specimenFields('A', { adhesive: 'casein' }), specimenFields('B')]
  addSpecimens(database, fields, morning, 'bench')
  const entry = database.prepare('SELECT entry_id FROM catalogue_current WHERE kind = ? AND name = ?').pluck()
  const [from, into] = ['casein C1', 'casein'].map((name) => entry.get('adhesive', name) as number)
  mergeCatalogueEntries(database, from!, into!, morning, { by: 'bench', reason: 'the same' })
  expect(new Set(look(database).map(({ adhesive }) => adhesive))).toEqual(new Set(['casein']))
})

it('counts the blocks of a pull as of its age, a few days late too', () => {
  const database = archiveInMemory()
  const studyId = storeStudy(database, { agesMonths: [0, 2], windowDays: 20 })
  const [first] = glueBlocks(database, studyId, storeBlocks(database, studyId, [{ ageMonths: 2 }]), '2031-02-13')
  storeBreak(database, first!)
  expect(look(database).map(({ ageMonths, blocks }) => [ageMonths, blocks.length])).toEqual([[2, 1]])
})
