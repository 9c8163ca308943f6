import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { appendSamples, beginBreak } from '#archive/breaks/breaks.ts'
import { verify } from '#archive/verify/verify.ts'
import { archiveInMemory, header, rampAndFall, session, storeBreak } from '../storedStudy.ts'

function faultsAfter(change: (database: Database.Database) => void): string[] {
  const database = archiveInMemory()
  storeBreak(database, null)
  change(database)
  return verify(database, () => {}).faults.map(({ where, what }) => `${where}: ${what}`)
}

test('names a trigger that is missing', () => {
  expect(faultsAfter((database) => database.exec('DROP TRIGGER ledger_is_never_changed'))).toEqual([
    'trigger ledger_is_never_changed: it is missing: the command repair can mend this',
  ])
})

test.each([
  ['trigger', 'specimen_revision_is_larger', 'AFTER INSERT ON specimen_revision BEGIN SELECT 1; END'],
  ['view', 'breaks', 'AS SELECT 1'],
  ['index', 'peaks', 'ON evaluation (peak_n)'],
  ['table', 'shelf', '(id INTEGER)'],
])('names a planted %s', (type, name, rest) => {
  expect(faultsAfter((database) => database.exec(`CREATE ${type} ${name} ${rest}`))).toEqual([
    `${type} ${name}: the program did not make it: the command repair can mend this`,
  ])
})

test('names a trigger whose text is another by one letter, and no other', () => {
  const change = (database: Database.Database) => {
    const name = 'evaluation_is_never_removed'
    const text = database.prepare('SELECT sql FROM sqlite_schema WHERE name = ?').pluck().get(name) as string
    database.exec(`DROP TRIGGER ${name}; ${text.replace('BEFORE DELETE', 'AFTER  DELETE')}`)
  }
  expect(faultsAfter(change)).toEqual([expect.stringMatching(/^trigger evaluation_is_never_removed: its text/)])
})

test('takes no offence at white space, nor at quotes around a name', () => {
  const change = (database: Database.Database) => {
    const name = 'evaluation_is_never_removed'
    const text = database.prepare('SELECT sql FROM sqlite_schema WHERE name = ?').pluck().get(name) as string
    database.exec(`DROP TRIGGER ${name}; ${text.replace('ON evaluation\n', 'ON   "evaluation"\t')}`)
  }
  expect(faultsAfter(change)).toEqual([])
})

test.each([
  ['bytes where its type is due', 'type = CAST(type AS BLOB)'],
  ['a type that is none', "type = 'tabla'"],
])('names a table that is listed with %s', (_name, change) => {
  const before = (database: Database.Database) => {
    database.unsafeMode(true)
    database.pragma('writable_schema = ON')
    database.exec(`UPDATE sqlite_schema SET ${change} WHERE type = 'table' AND name = 'assessment'`)
  }
  expect(faultsAfter(before)).toContain('table assessment: it is missing: the command repair can mend this')
})

test('finds a row that breaks a condition of its table, also where SQLite itself does not look', () => {
  const database = archiveInMemory()
  const { sessionId } = beginSession(database, session)
  const { breakId } = beginBreak(database, header(sessionId, null))
  appendSamples(database, breakId, rampAndFall(50, 100))
  database.pragma('ignore_check_constraints = ON')
  database.exec(`INSERT INTO running_block SELECT break_id, 1, samples, first_us, last_us, interval_us, times, 'degimal',
    decimals, differences, first_mantissa, first_step, readings, sha256 FROM running_block`)
  const faults = verify(database, () => {}).faults.map(({ where, what }) => `${where}: ${what}`)
  expect(faults).toContain(
    "table running_block, row 2: it breaks the condition reading_coding IN ('decimal', 'float64')",
  )
  // The checksum of the block covers its coding too.
  expect(faults.join()).toMatch(/The curve of break 1 is damaged in block 1/)
})
