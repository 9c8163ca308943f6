import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { takeTouched } from '#archive/core/touched.ts'
import { derivationVersion, isDerivedHere } from '#archive/lists/derivation.ts'
import { batchesOf, rebuildDerived } from '#archive/lists/rebuild.ts'
import { addSpecimens } from '#archive/specimens/specimens.ts'
import { verify } from '#archive/verify/verify.ts'
import type { Progress } from '#contract/tasks.ts'
import { archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

const never = () => false
const derived = ['break_current', 'specimen_current'] as const

function study(): Database.Database {
  const database = archiveInMemory()
  addSpecimens(database, [specimenFields('A-1'), specimenFields('A-2')], morning, 'bench')
  storeBreak(database, 1)
  storeBreak(database, null)
  const word = { recordedAt: morning, by: 'bench', reason: 'cracked', specimenId: null }
  addDecision(database, { ...word, breakId: 1, kind: 'peak-picked', sample: { timeS: 0.225, reading: 300_000 } })
  return database
}

const rowsOf = (database: Database.Database) =>
  derived.map((table) => database.prepare(`SELECT * FROM ${table} ORDER BY 1`).all())

test.each([
  ['rows that are gone', 'DELETE FROM break_current; DELETE FROM specimen_current'],
  ['rows that lie', "UPDATE break_current SET peak_n = 1, outcome = 'unloading', peak_decision_id = NULL"],
  [
    'a row of a specimen that is none',
    "UPDATE specimen_current SET specimen_id = 9, number_folded = 'x' WHERE specimen_id = 2",
  ],
  [
    'two specimens that hold each other’s number',
    "UPDATE specimen_current SET number_folded = CASE specimen_id WHEN 1 THEN 'a-2 ' ELSE 'a-1' END",
  ],
])('makes every list again from the records alone: %s', (_name, damage) => {
  const database = study()
  const whole = rowsOf(database)
  database.exec(damage)
  expect(verify(database, () => {}).sound).toBe(false)
  rebuildDerived(database, () => {}, never)
  expect(rowsOf(database)).toEqual(whole)
  expect(verify(database, () => {}).faults).toEqual([])
})

test('tells how far it is, and speaks of all lists as touched', () => {
  const database = study()
  takeTouched(database)
  const told: Progress[] = []
  rebuildDerived(database, (progress) => told.push(progress), never)
  expect(told[0]).toMatchObject({ done: 0, total: 4 })
  expect(told.at(-1)).toMatchObject({ done: 4, total: 4 })
  expect(takeTouched(database).toSorted()).toEqual(['breaks', 'catalogue', 'curves', 'results', 'specimens'])
})

test('leaves the lists as they were when it is stopped', () => {
  const database = study()
  database.exec('UPDATE break_current SET peak_n = 1; DELETE FROM derivation')
  const before = rowsOf(database)
  let told = 0
  const stop = () => told++ > 1
  expect(() => rebuildDerived(database, () => {}, stop)).toThrow(expect.objectContaining({ code: 'cancelled' }))
  expect(rowsOf(database)).toEqual(before)
  expect(isDerivedHere(database)).toBe(false)
})

test('notes which derivation made them; those of another one are no fault', () => {
  const database = study()
  database.exec(`UPDATE break_current SET peak_n = 1; UPDATE derivation SET version = ${derivationVersion + 1}`)
  expect(isDerivedHere(database)).toBe(false)
  expect(verify(database, () => {}).faults).toEqual([])
  rebuildDerived(database, () => {}, never)
  expect(isDerivedHere(database)).toBe(true)
  expect(rowsOf(database)[0]![0]).toMatchObject({ peak_n: 3000 })
})

test('takes a long list in pieces and loses nothing', () => {
  const numbers = Array.from({ length: 1201 }, (_, i) => i)
  const pieces = [...batchesOf(numbers)]
  expect(pieces.map((piece) => piece.length)).toEqual([500, 500, 201])
  expect(pieces.flat()).toEqual(numbers)
})
