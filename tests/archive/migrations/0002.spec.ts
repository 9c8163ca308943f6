import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addAssessment } from '#archive/assessments.ts'
import { formatVersion, migrate, migrations } from '#archive/migrate.ts'
import { addSpecimen } from '#archive/specimens.ts'
import { verify } from '#archive/verify.ts'
import { storeCalibrations } from '../storedCalibration.ts'
import { archiveInFormat, archiveInMemory, morning, specimenFields, storeBreak } from '../storedStudy.ts'

/** A study as the first format kept it. */
function studyInFormat1(): Database.Database {
  const database = archiveInFormat(1)
  const { specimenId } = addSpecimen(database, specimenFields('C1-LL-1'), morning, 'bench')
  const breakId = storeBreak(database, specimenId)
  const assessment = { recordedAt: morning, by: 'bench', failurePattern: 'SF' as const, note: 'ü' }
  addAssessment(database, { ...assessment, breakId, woodFailurePercent: 75 })
  return database
}

const ledgerOf = (database: Database.Database) => database.prepare('SELECT * FROM ledger ORDER BY seq').all()

test('brings an archive of the first format over with every record and every hash as it was', () => {
  const database = studyInFormat1()
  const tables = ['specimen_revision', 'capture_session', 'break_header', 'break_end', 'curve_block', 'evaluation']
  const everything = () => tables.map((table) => database.prepare(`SELECT * FROM ${table}`).all())
  const before = { ledger: ledgerOf(database), records: everything() }
  expect(before.ledger).toHaveLength(5)
  migrate(database, migrations.slice(0, 2), 'newer', '2032-01-01T00:00:00.000Z')
  expect(formatVersion(database)).toBe(2)
  expect(ledgerOf(database)).toEqual(before.ledger)
  expect(everything()).toEqual(before.records)
  expect(verify(database, () => {})).toMatchObject({ sound: true, ledgerEntries: 5 })
  storeCalibrations(database)
  expect(ledgerOf(database).slice(0, 5)).toEqual(before.ledger)
  expect(verify(database, () => {}).faults).toEqual([])
})

const recordTables = [
  ['ledger', 'seq'],
  ['weight_set', 'weight_set_id'],
  ['calibration_routine', 'routine_id'],
  ['calibration_reading', 'reading_id'],
  ['calibration_routine_end', 'routine_id'],
  ['calibration', 'calibration_id'],
  ['calibration_decision', 'calibration_decision_id'],
  ['check_weight', 'check_id'],
] as const

test.each(recordTables)('keeps %s append-only, whoever writes', (table, key) => {
  const database = archiveInMemory()
  storeCalibrations(database)
  // As in a stranger's connection, where REPLACE fires no delete triggers.
  database.pragma('recursive_triggers = OFF')
  database.pragma('foreign_keys = OFF')
  const before = database.prepare(`SELECT * FROM ${table}`).all()
  expect(before.length).toBeGreaterThan(0)
  for (const text of [
    `UPDATE ${table} SET ${key} = ${key}`,
    `DELETE FROM ${table}`,
    `REPLACE INTO ${table} SELECT * FROM ${table}`,
    `INSERT OR REPLACE INTO ${table} SELECT * FROM ${table} LIMIT 1`,
  ])
    expect(() => database.exec(text), text).toThrow(/append-only/)
  expect(database.prepare(`SELECT * FROM ${table}`).all()).toEqual(before)
})

test('covers every table that the migration made, all of them strict', () => {
  const tables = (database: Database.Database) =>
    database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[]
  const old = tables(archiveInFormat(1)).filter((name) => name !== 'ledger')
  const database = archiveInFormat(2)
  expect(
    tables(database)
      .filter((name) => !old.includes(name))
      .toSorted(),
  ).toEqual(recordTables.map(([table]) => table).toSorted())
  const loose = database
    .prepare("SELECT name FROM pragma_table_list WHERE schema = 'main' AND strict = 0 AND name NOT LIKE 'sqlite_%'")
    .all()
  expect(loose).toEqual([])
})
