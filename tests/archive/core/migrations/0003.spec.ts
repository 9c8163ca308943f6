import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import { addDecision } from '#archive/breaks/decisions.ts'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { reads } from '#archive/methods.ts'
import { openHere } from '#archive/openHere.ts'
import { verify } from '#archive/verify/verify.ts'
import { expectAppendOnly } from '../../appendOnly.ts'
import { storeReevaluation } from '../../storedReevaluation.ts'
import { archiveInFormat, archiveInMemory, morning, storeBreak, temporaryFolder } from '../../storedStudy.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'
const derived = ['break_current', 'specimen_current', 'format_history']

/** Rows as the older format knows them: without the columns that came later. */
function olderColumns(rows: Record<string, unknown[]>, of: Record<string, unknown[]>): Record<string, unknown[]> {
  return Object.fromEntries(
    Object.entries(of).map(([table, [first]]) => {
      const names = Object.keys((first as object) ?? {})
      const keep = (row: unknown) => names.map((name) => [name, (row as Record<string, unknown>)[name]])
      return [table, rows[table]!.map((row) => Object.fromEntries(keep(row)))]
    }),
  )
}

test.each([1, 2] as const)(
  'brings an archive of format %i over with every record and every hash as it was',
  (version) => {
    const database = olderArchive(version)
    const before = everyRow(database, derived)
    migrate(database, migrations.slice(0, 3), 'newer', later)
    expect(formatVersion(database)).toBe(3)
    const after = everyRow(database, derived)
    expect(after.ledger).toEqual(before.ledger)
    expect(olderColumns(after, before)).toEqual(before)
    for (const { cause, sample_time_s, sample_reading } of after.decision as Record<string, unknown>[])
      expect([cause, sample_time_s, sample_reading]).toEqual([null, null, null])
    for (const { course, reevaluation_id, beside_id } of after.evaluation as Record<string, unknown>[])
      expect([course, reevaluation_id, beside_id]).toEqual([null, null, null])
    migrate(database, migrations, 'newer', later)
    expect(verify(database, () => {})).toMatchObject({ faults: [], breaks: 3 })
  },
)

test('reads what the older format kept, with null for what it did not have', () => {
  const database = olderArchive(2)
  migrate(database, migrations, 'newer', later)
  const { evaluations, inForceId, summary } = reads.break(database, 1)
  expect(inForceId).toBe(3)
  expect(evaluations[0]!.result.events[0]).toMatchObject({ kind: 'pop-in', dropN: 120, fromN: null, periodS: null })
  expect(evaluations[0]).toMatchObject({ reevaluationId: null, besideId: null, result: { course: null } })
  expect(summary).toMatchObject({ overruled: null, setAsideCause: null })
  const { decisions } = reads.break(database, 2)
  expect(decisions.map(({ kind, cause, sample }) => [kind, cause, sample])).toEqual(
    ['set-aside', 'taken-back', 'reassigned', 'set-aside'].map((kind) => [kind, null, null]),
  )
})

test('goes on after the older records: their chain takes what is new', () => {
  const database = olderArchive(2)
  migrate(database, migrations, 'newer', later)
  const before = database.prepare('SELECT * FROM ledger ORDER BY seq').all()
  const word = { breakId: 1, recordedAt: later, by: 'bench', reason: 'an early crack', specimenId: null }
  addDecision(database, { ...word, kind: 'peak-picked', sample: { timeS: 0.2, reading: 266_667 } })
  addDecision(database, { ...word, kind: 'set-aside', cause: 'fixture-touched' })
  storeReevaluation(database, [1, 2], { kind: 'adopted' })
  const after = database.prepare('SELECT * FROM ledger ORDER BY seq').all()
  expect(after.slice(0, before.length)).toEqual(before)
  // Two decisions, a re-evaluation, its two results, its end, its decision.
  expect(after).toHaveLength(before.length + 7)
  expect(verify(database, () => {}).faults).toEqual([])
})

test('makes a checked copy of the older archive before it is brought over', () => {
  const path = join(temporaryFolder(), 'study.breakledger')
  olderArchive(2, path).close()
  const opened = openHere({ path, mode: 'write', program: 'newer', instant: later })
  opened.close()
  const copy = readdirSync(join(path, '..')).find((name) => name.startsWith('study-format-2-'))!
  const kept = new Database(join(path, '..', copy), { readonly: true })
  expect(formatVersion(kept)).toBe(2)
  expect(everyRow(kept)).toEqual(everyRow(olderArchive(2)))
  kept.close()
})

const recordTables = [
  ['ledger', 'seq'],
  ['evaluation', 'evaluation_id'],
  ['decision', 'decision_id'],
  ['reevaluation', 'reevaluation_id'],
  ['reevaluation_end', 'reevaluation_id'],
  ['reevaluation_decision', 'reevaluation_decision_id'],
] as const

function studyWithReevaluation() {
  const database = archiveInMemory()
  const breakId = storeBreak(database, null)
  const word = { breakId, recordedAt: morning, by: 'bench', reason: 'slipped', specimenId: null }
  addDecision(database, { ...word, kind: 'set-aside', cause: 'specimen-slipped' })
  storeReevaluation(database, [breakId], { kind: 'adopted' })
  return database
}

test.each(recordTables)('keeps %s append-only, whoever writes', (table, key) => {
  const database = studyWithReevaluation()
  expectAppendOnly(database, table, key)
})

test('takes one result of a break in each re-evaluation, and none after its end', () => {
  const database = archiveInMemory()
  const breakId = storeBreak(database, null)
  const reevaluationId = storeReevaluation(database, [breakId], null)
  const columns = (database.prepare("SELECT name FROM pragma_table_info('evaluation')").pluck().all() as string[])
    .filter((name) => name !== 'evaluation_id')
    .join(', ')
  const again = () =>
    database.exec(`INSERT OR REPLACE INTO evaluation (${columns})
      SELECT ${columns} FROM evaluation WHERE reevaluation_id = ${reevaluationId}`)
  expect(again).toThrow(/never replaced|takes no more results/)
  database.exec('DROP TRIGGER evaluation_is_never_replaced')
  expect(again).toThrow(/takes no more results/)
})

test.each([
  ['a sample where none belongs', "'set-aside', NULL, 0.5, 100"],
  ['no sample where one belongs', "'peak-picked', NULL, NULL, NULL"],
  ['half a sample', "'premature-failure', NULL, 0.5, NULL"],
  ['a cause where none belongs', "'taken-back', 'other', NULL, NULL"],
  ['a cause that is none', "'set-aside', 'bad luck', NULL, NULL"],
  ['a kind that is none', "'deleted', NULL, NULL, NULL"],
])('refused a decision with %s', (_name, values) => {
  const database = archiveInFormat(3)
  storeBreak(database, null)
  const text = `INSERT INTO decision (break_id, recorded_at, by, reason, kind, cause, sample_time_s, sample_reading)
    VALUES (1, '${morning}', 'bench', 'why', ${values})`
  expect(() => database.exec(text)).toThrow(/CHECK constraint failed/)
})

test('covers every table that the migration made, all of them strict', () => {
  const tables = (database: Database.Database) =>
    database.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[]
  const old = tables(archiveInFormat(2)).filter((name) => !['ledger', 'evaluation', 'decision'].includes(name))
  const database = archiveInFormat(3)
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
