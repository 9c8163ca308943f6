import { expect, it } from 'vitest'
import { listSpecimens, specimen, waitingSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { addDialReadings, decideImport, decideTypedResult, importRuns } from '#archive/specimens/typedResults.ts'
import { verify } from '#archive/verify/verify.ts'
import { listQuery } from '#contract/listQuery.ts'
import { dialReading } from '#contract/specimens/typedResult.ts'
import { expectAppendOnly } from '../appendOnly.ts'
import { importBlocks, readBlock } from '../storedImport.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

const reading = (specimenId: number, peakN: number) =>
  dialReading.parse({ specimenId, peakN, resolutionN: 50, readBy: 'Ada Thole', note: 'power cut' })
const word = { recordedAt: morning, by: 'Ada Thole', reason: 'misread' }

function threeSpecimens() {
  const database = archiveInMemory()
  addSpecimens(
    database,
    ['C1-1', 'C1-2', 'C1-3'].map((number) => specimenFields(number)),
    morning,
    'bench',
  )
  return database
}

it('keeps readings of a dial with their step and who read them, all or none', () => {
  const database = threeSpecimens()
  addDialReadings(database, [reading(1, 4800), reading(2, 6000)], morning, 'bench')
  expect(specimen(database, 1).current.typedResultInForce).toMatchObject({
    ...{ source: 'dial', peakN: 4800, strengthMPa: 8, resolutionN: 50, readBy: 'Ada Thole', note: 'power cut' },
    file: null,
  })
  expect(() => addDialReadings(database, [reading(3, 1000), reading(9, 1000)], morning, 'bench')).toThrow(
    'There is no specimen 9',
  )
  expect(specimen(database, 3).typedResults).toEqual([])
  expectAppendOnly(database, 'typed_result', 'typed_result_id')
})

it('gives way to a break that counts, and counts again when that is set aside', () => {
  const database = threeSpecimens()
  addDialReadings(database, [reading(1, 4800)], morning, 'bench')
  storeBreak(database, 1)
  const { current } = specimen(database, 1)
  expect(current).toMatchObject({ typedResultInForce: null, timesBroken: 2 })
  expect(current.breakInForce).not.toBeNull()
})

it('counts no longer once it is set aside, the specimen is broken all the same, and is taken back with who and why', () => {
  const database = threeSpecimens()
  addDialReadings(database, [reading(1, 4800)], morning, 'bench')
  expect(waitingSpecimens(database, null, 10).rows.map(({ fields }) => fields.number)).toEqual(['C1-2', 'C1-3'])
  decideTypedResult(database, { ...word, typedResultId: 1, kind: 'set-aside' })
  expect(specimen(database, 1)).toMatchObject({
    current: { typedResultInForce: null, timesBroken: 1 },
    typedResults: [{ setAside: { by: 'Ada Thole', reason: 'misread', recordedAt: morning, cause: null } }],
  })
  expect(waitingSpecimens(database, null, 10).total).toBe(2)
  expect(listSpecimens(database, listQuery.parse({ status: 'set-aside' })).total).toBe(1)
  expect(() => decideTypedResult(database, { ...word, typedResultId: 1, kind: 'set-aside' })).toThrow(
    'Result 1 is set aside already.',
  )
  decideTypedResult(database, { ...word, typedResultId: 1, kind: 'taken-back' })
  expect(specimen(database, 1).current.typedResultInForce?.peakN).toBe(4800)
  expect(verify(database, () => {}).faults).toEqual([])
})

it('lets the specimen wait again where the reading was of another block', () => {
  const database = threeSpecimens()
  addDialReadings(database, [reading(1, 4800)], morning, 'bench')
  decideTypedResult(database, { ...word, typedResultId: 1, kind: 'set-aside', cause: 'wrong-block' })
  expect(specimen(database, 1)).toMatchObject({
    current: { typedResultInForce: null, timesBroken: 0 },
    typedResults: [{ setAside: { cause: 'wrong-block' } }],
  })
  expect(waitingSpecimens(database, null, 10).total).toBe(3)
  decideTypedResult(database, { ...word, typedResultId: 1, kind: 'taken-back' })
  expect(waitingSpecimens(database, null, 10).total).toBe(2)
  expect(() => decideTypedResult(database, { ...word, typedResultId: 1, kind: 'taken-back' })).toThrow(
    'is used already',
  )
  expect(verify(database, () => {}).faults).toEqual([])
})

it('sets a wrong file aside: what was there before it waits again, what came with it does not', () => {
  const database = threeSpecimens()
  const values = { wood: '', exposure: '' }
  importBlocks(database, [readBlock(2, { ...values, number: 'C1-2' }), readBlock(3, { ...values, number: 'C1-9' })])
  decideImport(database, 1, { ...word, kind: 'set-aside', cause: 'wrong-block' })
  expect(waitingSpecimens(database, null, 10).rows.map(({ fields }) => fields.number)).toEqual(['C1-1', 'C1-2', 'C1-3'])
  expect(specimen(database, 4).current).toMatchObject({ fields: { number: 'C1-9' }, timesBroken: 1 })
  decideImport(database, 1, { ...word, kind: 'taken-back' })
  decideImport(database, 1, { ...word, kind: 'set-aside', cause: 'other' })
  expect(waitingSpecimens(database, null, 10).rows.map(({ fields }) => fields.number)).toEqual(['C1-1', 'C1-3'])
})

it('sets a whole import aside, and takes it back', () => {
  const database = archiveInMemory()
  importBlocks(database, [readBlock(2), readBlock(3), readBlock(4)])
  decideTypedResult(database, { ...word, typedResultId: 2, kind: 'set-aside' })
  expect(decideImport(database, 1, { ...word, kind: 'set-aside' })).toBe(2)
  expect(importRuns(database)).toMatchObject([{ results: 3, inUse: 0 }])
  expect(decideImport(database, 1, { ...word, kind: 'taken-back' })).toBe(3)
  expect(importRuns(database)).toMatchObject([{ results: 3, inUse: 3 }])
  expect(() => decideImport(database, 7, { ...word, kind: 'taken-back' })).toThrow('There is no import 7')
})
