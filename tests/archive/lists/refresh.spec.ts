import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { reads } from '#archive/methods.ts'
import { listSpecimens, waitingSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import { listQuery } from '#contract/listQuery.ts'
import { decide, resultBeside, storeReevaluation } from '../storedReevaluation.ts'
import { archiveInMemory, morning, rampAndFall, specimenFields, storeBreak } from '../storedStudy.ts'

const curve = rampAndFall(500, 600_000)
const double = { kind: 'uncalibrated-scale', nPerCount: 0.02 } as const
const word = { recordedAt: morning, by: 'bench', reason: 'why', specimenId: null }

// Specimens 1 to 3. Specimen 1 has breaks 1 and 2, the newer one in force; break 3 is of specimen 2; break 4 of none.
function study(): Database.Database {
  const database = archiveInMemory()
  addSpecimens(
    database,
    ['A-1', 'A-2', 'A-3'].map((number) => specimenFields(number)),
    morning,
    'bench',
  )
  for (const specimenId of [1, 1, 2, null]) storeBreak(database, specimenId, curve)
  return database
}

const shown = (database: Database.Database) =>
  listSpecimens(database, listQuery.parse({})).rows.map(({ breakInForce }) => [
    breakInForce?.breakId ?? null,
    breakInForce?.peakN ?? null,
  ])

/** What lists show must be what the records say, row by row, after every decision. */
function soundly<Value>(database: Database.Database, value: Value): Value {
  expect(verify(database, () => {}).faults).toEqual([])
  return value
}

test('brings breaks and specimens up to date when results are put in force and taken out again', () => {
  const database = study()
  const under = (breakId: number) => resultBeside(database, breakId, {}, double)
  const reevaluationId = storeReevaluation(database, [1, 2, 3, 4], null, under)
  expect(shown(database)).toEqual([
    [2, 6000],
    [3, 6000],
    [null, null],
  ])
  expect(decide(database, reevaluationId, 'adopted')).toMatchObject({ breakIds: [1, 2, 3, 4], specimenIds: [1, 2] })
  expect(soundly(database, shown(database))).toEqual([
    [2, 12_000],
    [3, 12_000],
    [null, null],
  ])
  expect(reads.break(database, 4).summary.peakN).toBe(12_000)
  decide(database, reevaluationId, 'dropped')
  expect(soundly(database, shown(database)[0])).toEqual([2, 6000])
})

test('lets a specimen wait again whose break is none any more, or falls back on its older break', () => {
  const database = study()
  const none = (breakId: number) => resultBeside(database, breakId, { outcome: 'unloading' })
  const reevaluationId = storeReevaluation(database, [2, 3], { kind: 'adopted' }, none)
  expect(soundly(database, shown(database))).toEqual([
    [1, 6000],
    [null, null],
    [null, null],
  ])
  expect(waitingSpecimens(database, null, 10).total).toBe(2)
  decide(database, reevaluationId, 'dropped')
  expect(soundly(database, shown(database).slice(0, 2))).toEqual([
    [2, 6000],
    [3, 6000],
  ])
  expect(waitingSpecimens(database, null, 10).total).toBe(1)
})

test('keeps a break out that is set aside, and follows one that was moved', () => {
  const database = study()
  addDecision(database, { ...word, breakId: 2, kind: 'set-aside' })
  addDecision(database, { ...word, breakId: 3, kind: 'reassigned', specimenId: 3 })
  const under = (breakId: number) => resultBeside(database, breakId, {}, double)
  const { specimenIds } = decide(database, storeReevaluation(database, [2, 3], null, under), 'adopted')
  expect(specimenIds).toEqual([1, 3])
  expect(soundly(database, shown(database))).toEqual([
    [1, 6000],
    [null, null],
    [3, 12_000],
  ])
})

test('reads an overruled peak under the scale that is in force then', () => {
  const database = study()
  addDecision(database, { ...word, breakId: 3, kind: 'peak-picked', sample: { timeS: 0.225, reading: 300_000 } })
  expect(shown(database)[1]).toEqual([3, 3000])
  const under = (breakId: number) => resultBeside(database, breakId, { outcome: 'unloading' }, double)
  const reevaluationId = storeReevaluation(database, [3], { kind: 'adopted' }, under)
  expect(soundly(database, shown(database)[1])).toEqual([3, 6000])
  expect(reads.break(database, 3).summary).toMatchObject({ outcome: 'break', overruled: { foundPeakN: 12_000 } })
  decide(database, reevaluationId, 'dropped')
  expect(soundly(database, shown(database)[1])).toEqual([3, 3000])
})
