import { expect, it } from 'vitest'
import { listSpecimens, specimen } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { decideImport, importRuns } from '#archive/specimens/typedResults.ts'
import { verify } from '#archive/verify/verify.ts'
import { listQuery } from '#contract/listQuery.ts'
import { runningOf } from '#domain/programme/labels/label.ts'
import { importBlocks, readBlock, savedAgain } from '../../storedImport.ts'
import { archiveInMemory, morning, specimenFields } from '../../storedStudy.ts'

it('makes a specimen with its result of each new block, marked with file, row and column', () => {
  const database = archiveInMemory()
  const values = { number: 'A-007', board: 'b3', gluedOn: '2019-03-14', brokenOn: '2020-03-16', woodFailurePercent: 25 }
  importBlocks(database, [readBlock(4, { ...values, note: 'knot', ageMonths: 12, failurePattern: 'CF' }, '1')])
  const { current, typedResults } = specimen(database, 1)
  expect(current.fields).toMatchObject({
    number: 'A-007',
    adhesive: 'casein C1',
    wood: 'beech',
    board: 'b3',
    areaMm2: 600,
  })
  expect(current).toMatchObject({ breakInForce: null, typedResultInForce: typedResults[0], timesBroken: 1 })
  expect(typedResults).toMatchObject([
    {
      ...{ source: 'import', row: 4, column: '1', peakN: 5000, woodFailurePercent: 25, failurePattern: 'CF' },
      ...{ brokenOn: '2020-03-16', ageMonths: 12, note: 'knot', setAside: null },
      file: { fileName: 'blocks.csv', fileSha256: 'a'.repeat(64) },
    },
  ])
  expect(typedResults[0]!.strengthMPa).toBeCloseTo(5000 / 600, 12)
  expect(verify(database, () => {}).faults).toEqual([])
})

it('keeps a number as it was written, and gives one with a check digit where there is none, which nobody wrote before', () => {
  const database = archiveInMemory()
  // 18 is the first number of ours: 1 with its check digit
  addSpecimens(database, [specimenFields('1X'), specimenFields('28')], morning, 'bench')
  const numbers = importBlocks(database, [readBlock(2), readBlock(3, { number: '0042' }), readBlock(4)]).map(
    ({ number }) => number!,
  )
  expect(numbers[1]).toBe('0042')
  for (const number of [numbers[0]!, numbers[2]!]) expect(runningOf(number)).not.toBeNull()
  expect(new Set([...numbers, '28']).size).toBe(4)
})

it('gives no block a number that another one of the same table has', () => {
  const database = archiveInMemory()
  const numbers = importBlocks(database, [readBlock(2), readBlock(3, { number: '28' })]).map(({ number }) => number)
  expect(numbers).toEqual(['36', '28'])
})

it('lists and sorts a strength that has no load beside the others, and says that it has no load', () => {
  const database = archiveInMemory()
  const alone = { areaMm2: null, peakN: null, strengthMPa: 9 }
  importBlocks(database, [
    readBlock(2, { number: 'A', peakN: 6000 }),
    readBlock(3, { number: 'B', ...alone }),
    readBlock(4, { number: 'C', peakN: 1200 }),
  ])
  const { rows } = listSpecimens(database, listQuery.parse({ sort: 'strengthMPa', status: 'broken' }))
  expect(rows.map(({ fields, typedResultInForce }) => [fields.number, typedResultInForce?.strengthMPa])).toEqual([
    ['C', 2],
    ['B', 9],
    ['A', 10],
  ])
  expect(rows[1]!.typedResultInForce?.peakN).toBeNull()
  expect(listSpecimens(database, listQuery.parse({ status: 'waiting' })).total).toBe(0)
})

it('is found in lists by the file, by its mark and by its figures', () => {
  const database = archiveInMemory()
  importBlocks(database, [readBlock(2, { number: 'A', peakN: 4321, note: 'knot' })])
  for (const text of ['blocks.csv', 'peak only', 'imported', 'peak 4321', 'knot'])
    expect(listSpecimens(database, listQuery.parse({ text })).total, text).toBe(1)
  for (const text of ['waiting', 'other.csv'])
    expect(listSpecimens(database, listQuery.parse({ text })).total, text).toBe(0)
})

it('stores nothing where nothing is new, and nothing at all where it is stopped', () => {
  const database = archiveInMemory()
  const blocks = [readBlock(2), readBlock(3)]
  importBlocks(database, blocks)
  const entries = () => database.prepare('SELECT count(*) FROM ledger').pluck().get()
  const before = entries()
  importBlocks(database, blocks)
  expect(entries()).toBe(before)
  expect(() => importBlocks(database, [readBlock(9, { peakN: 1 })], { file: savedAgain }, () => true)).toThrow(
    'The import was stopped; nothing of it was stored.',
  )
  expect(entries()).toBe(before)
  expect(importRuns(database)).toMatchObject([{ fileName: 'blocks.csv', results: 2, inUse: 2 }])
})

it('adds the result to a specimen that is there and waits', () => {
  const database = archiveInMemory()
  addSpecimens(database, [specimenFields('C1-1')], morning, 'bench')
  const [made] = importBlocks(database, [readBlock(2, { number: 'C1-1' })])
  expect(made).toMatchObject({ fate: 'new', specimenId: 1 })
  expect(specimen(database, 1)).toMatchObject({ revisions: [{ revision: 1 }], typedResults: [{ peakN: 5000 }] })
})

it('brings a file in again that was set aside: its blocks are recorded anew under their numbers, and count once', () => {
  const database = archiveInMemory()
  const [before] = importBlocks(database, [readBlock(2, { lot: '7', place: 'box 1' }), readBlock(3)])
  const word = { recordedAt: morning, by: 'Ada Thole', reason: 'read in the wrong unit' }
  decideImport(database, 1, { ...word, kind: 'set-aside', cause: 'wrong-block' })
  const later = '2031-05-03T09:30:00.000Z'
  const again = importBlocks(database, [readBlock(2, { peakN: 22_241, areaMm2: 484 }), readBlock(3)], {
    recordedAt: later,
  })
  expect(again.map(({ fate, specimenId, number }) => [fate, specimenId, number])).toEqual([
    ['new', 1, before!.number],
    ['already-there', 2, again[1]!.number],
  ])
  expect(specimen(database, 1).current).toMatchObject({
    revision: 2,
    fields: { number: before!.number, lot: '', place: '', areaMm2: 484 },
    typedResultInForce: { peakN: 22_241, importRunId: 2 },
  })
  expect(listSpecimens(database, listQuery.parse({ status: 'broken' })).total).toBe(1)
  expect(importBlocks(database, [readBlock(2, { peakN: 22_241, areaMm2: 484 })])[0]).toMatchObject({
    fate: 'already-there',
    cause: { kind: 'same-place' },
  })
  expect(verify(database, () => {}).faults).toEqual([])
})
