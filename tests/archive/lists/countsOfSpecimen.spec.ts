import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { takeTouched } from '#archive/core/touched.ts'
import { readBreakSummary } from '#archive/lists/summaries.ts'
import { specimen, waitingSpecimens } from '#archive/specimens/specimenRecords.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import type { SetAsideCause } from '#contract/breaks/decision.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

function study(): Database.Database {
  const database = archiveInMemory()
  const fields = ['A-1', 'A-2'].map((number) => specimenFields(number))
  addSpecimens(database, fields, morning, 'bench')
  return database
}
function setAside(database: Database.Database, breakId: number, cause: SetAsideCause): void {
  const word = { recordedAt: morning, by: 'bench', reason: 'seen', specimenId: null }
  addDecision(database, { ...word, breakId, kind: 'set-aside', cause })
}
const results = (database: Database.Database, breakId: number) =>
  readBreakSummary(database, breakId).summary.resultsOfSpecimen
const waiting = (database: Database.Database) =>
  waitingSpecimens(database, null, 10).rows.map(({ fields }) => fields.number)

test('says of both breaks of one specimen that there are two results, and tells whoever shows the first', () => {
  const database = study()
  storeBreak(database, 1)
  expect(results(database, 1)).toBe(1)
  takeTouched(database)
  storeBreak(database, 1)
  expect(takeTouched(database)).toContain('break 1')
  expect([results(database, 1), results(database, 2)]).toEqual([2, 2])
  expect(specimen(database, 1).current).toMatchObject({ results: 2, timesBroken: 2 })
})

test('counts no unloading, no break of no specimen, and none that is set aside', () => {
  const database = study()
  storeBreak(database, 1)
  storeBreak(database, 1, undefined, { outcome: 'unloading' })
  storeBreak(database, null)
  expect([1, 2, 3].map((breakId) => results(database, breakId))).toEqual([1, 0, 0])
  storeBreak(database, 1)
  setAside(database, 1, 'specimen-slipped')
  expect([results(database, 1), results(database, 4)]).toEqual([0, 1])
  expect(specimen(database, 1).current).toMatchObject({ results: 1, timesBroken: 2 })
})

test('lets a specimen wait no more once it broke, unless another block was in the press', () => {
  const database = study()
  storeBreak(database, 1)
  setAside(database, 1, 'other')
  expect(waiting(database)).toEqual(['A-2'])
  expect(specimen(database, 1).current).toMatchObject({ breakInForce: null, results: 0, timesBroken: 1 })
  setAside(database, 1, 'wrong-block')
  expect(waiting(database)).toEqual(['A-1', 'A-2'])
})

test('keeps invented specimens from a real press', () => {
  const database = archiveInMemory()
  addSpecimens(database, [specimenFields('A-1'), specimenFields('B-1', { demo: false })], morning, 'bench')
  expect(waiting(database)).toEqual(['A-1', 'B-1'])
  expect(waitingSpecimens(database, null, 10, false)).toMatchObject({ total: 1, rows: [{ fields: { number: 'B-1' } }] })
})
