import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { expectAppendOnly } from '../../appendOnly.ts'
import { archiveInFormat } from '../../storedStudy.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

test('brings an archive of the first format over with every record and every hash as it was', () => {
  const database = olderArchive(1)
  const before = everyRow(database, ['format_history'])
  expect(before.ledger).toHaveLength(16)
  migrate(database, migrations.slice(0, 2), 'newer', '2032-01-01T00:00:00.000Z')
  expect(formatVersion(database)).toBe(2)
  expect(everyRow(database)).toMatchObject(before)
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
  const database = olderArchive(2)
  expectAppendOnly(database, table, key)
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
