import { expect, test } from 'vitest'
import { beginSession } from '#archive/bench/sessions.ts'
import { firstPreviousHash, type LedgerRow, ledgerHash } from '#archive/core/ledger.ts'
import { archiveInMemory, session } from '../storedStudy.ts'

test('hashes an entry as sha256sum does over its six lines', () => {
  const database = archiveInMemory()
  beginSession(database, session)
  const entry = database.prepare<[], LedgerRow>('SELECT * FROM ledger').get()!
  expect(entry.content).toBe(
    '{"lineFormat":"number","program":"breakledger 0.1.0","sessionId":1,"source":"virtual amplifier: brittle","startedAt":"2031-05-02T09:30:00.000Z"}',
  )
  // Of the worked example of FORMAT.md: printf of the six lines piped to sha256sum.
  expect(entry.hash).toBe('4d734c2feeb3f65977df9c937e3c277723d7600beb6906be8a54276a73ae94b7')
  expect(ledgerHash(entry)).toBe(entry.hash)
})

test('chains each entry to the one before', () => {
  const database = archiveInMemory()
  for (let i = 0; i < 3; i++) beginSession(database, session)
  const entries = database.prepare<[], LedgerRow>('SELECT * FROM ledger ORDER BY seq').all()
  expect(entries.map((entry) => entry.seq)).toEqual([1, 2, 3])
  expect(entries.map((entry) => entry.previous_hash)).toEqual([firstPreviousHash, entries[0]!.hash, entries[1]!.hash])
})
