import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { firstPreviousHash, type LedgerRow, ledgerHash } from '#archive/core/ledger.ts'
import { migrate, migrations } from '#archive/core/migrate.ts'
import { archiveInMemory, morning, session } from '../storedStudy.ts'

test('hashes an entry as sha256sum does over its six lines', () => {
  const database = new Database(':memory:')
  onTestFinished(() => void database.close())
  migrate(database, migrations.slice(0, 5), 'breakledger 0.1.0', morning)
  const entry = database.prepare<[], LedgerRow>('SELECT * FROM ledger').get()!
  expect(entry.content).toBe(`{"formatVersion":5,"program":"breakledger 0.1.0","reachedAt":"${morning}"}`)
  // Of the worked example of FORMAT.md: its six lines piped to sha256sum.
  expect(entry.hash).toBe('6f4889a659420ecd55507d5fed405f7ceda6ea9c937063a6b5481ae1a73df4a9')
  expect(ledgerHash(entry)).toBe(entry.hash)
})

test('chains each entry to the one before', () => {
  const database = archiveInMemory()
  for (let i = 0; i < 2; i++) beginSession(database, session)
  const entries = database.prepare<[], LedgerRow>('SELECT * FROM ledger ORDER BY seq').all()
  expect(entries.map((entry) => entry.seq)).toEqual([1, 2, 3])
  expect(entries.map((entry) => entry.previous_hash)).toEqual([firstPreviousHash, entries[0]!.hash, entries[1]!.hash])
})
