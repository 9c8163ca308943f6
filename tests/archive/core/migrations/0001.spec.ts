import { expect, test } from 'vitest'
import { expectAppendOnly } from '../../appendOnly.ts'
import { morning } from '../../storedStudy.ts'
import { olderArchive } from '../olderArchive.ts'

const running = 3
const archiveWithEverything = () => ({ database: olderArchive(1), running })

const recordTables = [
  ['ledger', 'seq'],
  ['specimen_revision', 'revision_id'],
  ['capture_session', 'session_id'],
  ['rejected_line', 'rejected_line_id'],
  ['break_header', 'break_id'],
  ['break_end', 'break_id'],
  ['curve_block', 'block'],
  ['running_block', 'block'],
  ['evaluation', 'evaluation_id'],
  ['assessment', 'assessment_id'],
  ['decision', 'decision_id'],
] as const

test.each(recordTables)('keeps %s append-only, whoever writes', (table, key) => {
  const { database } = archiveWithEverything()
  expectAppendOnly(database, table, key)
})

test('covers every table that is no derived list, preference or note of the format', () => {
  const { database } = archiveWithEverything()
  const tables = database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all()
  const open = ['format_history', 'preference', 'break_current', 'specimen_current']
  expect(tables.filter((name) => !open.includes(String(name))).toSorted()).toEqual(
    recordTables.map(([table]) => table).toSorted(),
  )
})

test('has strict tables only', () => {
  const { database } = archiveWithEverything()
  const loose = database
    .prepare("SELECT name FROM pragma_table_list WHERE schema = 'main' AND strict = 0 AND name NOT LIKE 'sqlite_%'")
    .all()
  expect(loose).toEqual([])
})

test('takes no more samples for a finished break, sealed or running', () => {
  const { database } = archiveWithEverything()
  for (const table of ['curve_block', 'running_block'])
    expect(() =>
      database.exec(`INSERT INTO ${table} (break_id, block, samples, first_us, last_us, interval_us, times, reading_coding,
        decimals, differences, first_mantissa, first_step, readings, sha256)
        SELECT break_id, 99, samples, first_us, last_us, interval_us, times, reading_coding,
        decimals, differences, first_mantissa, first_step, readings, sha256 FROM curve_block LIMIT 1`),
    ).toThrow(/takes no more samples/)
})

test('lets running samples go only when an end and a sealed curve that covers them exist', () => {
  const { database, running } = archiveWithEverything()
  const remove = () => database.exec(`DELETE FROM running_block WHERE break_id = ${running}`)
  const seal = (lastUs: number) =>
    database.exec(`INSERT INTO curve_block SELECT break_id, block, samples, first_us, ${lastUs}, interval_us, times,
      reading_coding, decimals, differences, first_mantissa, first_step, readings, sha256
      FROM running_block WHERE break_id = ${running}`)
  const end = () =>
    database.exec(`INSERT INTO break_end VALUES (${running}, '${morning}', 'complete', 10, 0, '${'0'.repeat(64)}')`)

  database.exec('SAVEPOINT a')
  seal(8999)
  expect(remove).toThrow(/until the sealed curve covers them/)
  end()
  expect(remove).toThrow(/until the sealed curve covers them/)
  database.exec('ROLLBACK TO a')
  seal(9000)
  end()
  expect(remove).not.toThrow()
})
