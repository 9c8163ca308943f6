import type Database from 'better-sqlite3'
import { expect, test } from 'vitest'
import * as z from 'zod'
import { json, plain, truth } from '#archive/core/columns.ts'
import { migrate, migrations } from '#archive/core/migrate.ts'
import type { Migration } from '#archive/core/migration.ts'
import { appendOnly } from '#archive/core/migrations/0001.ts'
import { type LedgeredKind, recordKind, storeRecord } from '#archive/core/recordKind.ts'
import { numbered, readRecord, readRecords } from '#archive/core/recordTable.ts'
import { takeTouched } from '#archive/core/touched.ts'
import { inTransaction } from '#archive/core/transaction.ts'
import { recordKinds } from '#archive/verify/recordKinds.ts'
import { verify } from '#archive/verify/verify.ts'
import { behindTheTriggers } from '../behindTheTriggers.ts'
import { archiveInMemory, morning, storeBreak } from '../storedStudy.ts'

// A kind of record that the program does not have, to show what one takes: a declaration and a migration.

const clampKind = recordKind({
  name: 'clamp',
  noun: 'clamp',
  table: 'clamp',
  identity: numbered('clampId'),
  instant: 'recordedAt',
  schema: z.strictObject({
    clampId: z.int(),
    recordedAt: z.iso.datetime(),
    by: z.string().max(10),
    forcesN: z.array(z.number()),
    padded: z.boolean(),
  }),
  columns: { recordedAt: plain, by: plain, forcesN: json, padded: truth },
  topics: () => ['routines'],
})

const migration: Migration = {
  number: migrations.length + 1,
  title: 'clamps',
  sql: `CREATE TABLE clamp (
    clamp_id INTEGER PRIMARY KEY, recorded_at TEXT NOT NULL, by TEXT NOT NULL, forces_n TEXT NOT NULL, padded INTEGER NOT NULL
  ) STRICT;
  ${appendOnly('clamp', 'clamp_id = NEW.clamp_id')}`,
}

const clamp = { recordedAt: morning, by: 'bench', forcesN: [400, 400.5], padded: true }
const kinds = [...recordKinds, clampKind]
const withClamps = [...migrations, migration]
const faultsOf = (database: Database.Database, known: readonly LedgeredKind[] = kinds) =>
  verify(database, () => {}, known, withClamps).faults

function study(): Database.Database {
  const database = archiveInMemory()
  migrate(database, withClamps, 'newer', morning)
  storeBreak(database, null)
  inTransaction(database, () => storeRecord(database, clampKind, clamp))
  return database
}

test('is stored, read and entered in the ledger by its declaration alone', () => {
  const database = study()
  expect(readRecord(database, clampKind, 1)).toEqual({ clampId: 1, ...clamp })
  expect(readRecords(database, clampKind, 'ORDER BY clamp_id')).toHaveLength(1)
  expect(takeTouched(database)).toContain('routines')
  expect(database.prepare("SELECT * FROM ledger WHERE kind = 'clamp'").get()).toMatchObject({
    record_id: 1,
    recorded_at: morning,
    content: `{"by":"bench","clampId":1,"forcesN":[400,400.5],"padded":true,"recordedAt":"${morning}"}`,
  })
  expect(faultsOf(database)).toEqual([])
})

test.each([
  ['one that was changed', 'UPDATE clamp SET padded = 0', /clamp 1\): the record differs from what the ledger holds/],
  ['one that is gone', 'DELETE FROM clamp', /clamp 1\): its record cannot be read: There is no clamp 1/],
  [
    'one that was slipped in',
    `INSERT INTO clamp VALUES (2, '${morning}', 'x', '[]', 0)`,
    /clamp 2: the record has no entry in the ledger/,
  ],
])('is verified by it: %s', (_name, text, fault) => {
  const database = study()
  behindTheTriggers(database, text)
  expect(faultsOf(database).map(({ where, what }) => `${where}: ${what}`)).toEqual([expect.stringMatching(fault)])
})

test('is never stored when it could not be read back', () => {
  const database = study()
  const store = () => inTransaction(database, () => storeRecord(database, clampKind, { ...clamp, by: 'x'.repeat(11) }))
  expect(store).toThrow(expect.objectContaining({ code: 'invalid-input', message: expect.stringMatching(/by/) }))
  expect(readRecords(database, clampKind, '')).toHaveLength(1)
  expect(faultsOf(database)).toEqual([])
})

test('is unknown to a program without its declaration, and verify says so', () => {
  expect(faultsOf(study(), recordKinds)).toEqual([
    { where: expect.stringMatching(/clamp 1/), what: 'no record is called "clamp"' },
  ])
})

test('keeps its place in the chain with the kinds that were there before', () => {
  const database = study()
  storeBreak(database, null)
  const places = database.prepare("SELECT seq FROM ledger WHERE kind = 'clamp'").pluck().all()
  expect(places).toEqual([6])
  expect(database.prepare('SELECT count(*) FROM ledger').pluck().get()).toBe(9)
})
