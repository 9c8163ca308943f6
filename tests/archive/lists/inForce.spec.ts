import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addEvaluation } from '#archive/breaks/evaluations.ts'
import { evaluationInForce, standingText } from '#archive/lists/inForce.ts'
import { reads } from '#archive/methods.ts'
import { verify } from '#archive/verify/verify.ts'
import { decide, resultBeside, storeReevaluation } from '../storedReevaluation.ts'
import { archiveInMemory, evaluationOf, rampAndFall, storeBreak } from '../storedStudy.ts'

const curve = rampAndFall(500, 600_000)

/** The number in force by the records, which must be the one that the lists and the record show. */
function inForce(database: Database.Database, breakId = 1): number | null {
  const number = evaluationInForce(database, breakId)
  const record = reads.break(database, breakId)
  expect(record.inForceId).toBe(number)
  const shown = record.evaluations.find(({ evaluationId }) => evaluationId === number)
  expect(record.summary.peakN).toBe(shown?.result.peakN ?? null)
  expect(verify(database, () => {}).faults).toEqual([])
  return number
}

function oneBreak(): Database.Database {
  const database = archiveInMemory()
  storeBreak(database, null, curve)
  return database
}

test('is the newest of those that were made for the break alone', () => {
  const database = oneBreak()
  expect(inForce(database)).toBe(1)
  addEvaluation(database, { ...evaluationOf(curve), breakId: 1 })
  expect(inForce(database)).toBe(2)
})

test('is none while a capture runs', () => {
  const database = oneBreak()
  expect(evaluationInForce(database, 2)).toBeNull()
})

test('is no result of a re-evaluation until that is adopted, and no longer once it is dropped', () => {
  const database = oneBreak()
  const reevaluationId = storeReevaluation(database, [1], null)
  expect(inForce(database)).toBe(1)
  decide(database, reevaluationId, 'adopted')
  expect(inForce(database)).toBe(2)
  decide(database, reevaluationId, 'dropped')
  expect(inForce(database)).toBe(1)
})

test('is whatever was put in force last, not what was made last', () => {
  const database = oneBreak()
  const first = storeReevaluation(database, [1], null)
  const second = storeReevaluation(database, [1], { kind: 'adopted' })
  expect(inForce(database)).toBe(3)
  decide(database, first, 'adopted')
  expect(inForce(database)).toBe(2)
  addEvaluation(database, { ...evaluationOf(curve), breakId: 1 })
  expect(inForce(database)).toBe(4)
  decide(database, second, 'adopted')
  expect(inForce(database)).toBe(3)
  decide(database, second, 'dropped')
  expect(inForce(database)).toBe(4)
  expect(reads.break(database, 1).evaluations).toHaveLength(4)
})

test('leaves alone what a re-evaluation was not made for', () => {
  const database = oneBreak()
  storeBreak(database, null, curve)
  storeReevaluation(database, [2], { kind: 'adopted' }, (breakId) => resultBeside(database, breakId))
  expect(inForce(database, 1)).toBe(1)
  expect(inForce(database, 2)).toBe(3)
})

test('is found by the indexes, however many records there are', () => {
  const database = archiveInMemory()
  const plan = database.prepare<[], { detail: string }>(`EXPLAIN QUERY PLAN ${standingText('1')} LIMIT 1`).all()
  const details = plan.map(({ detail }) => detail)
  expect(details.filter((detail) => detail.startsWith('SCAN'))).toEqual([])
  expect(details.join('\n')).toMatch(/SEARCH e USING INDEX evaluation_of_break/)
  expect(details.join('\n')).toMatch(
    /SEARCH l USING COVERING INDEX sqlite_autoindex_ledger_1 \(kind=\? AND record_id=\?\)/,
  )
})
