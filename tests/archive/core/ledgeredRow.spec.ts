import { expect, test } from 'vitest'
import { addLedgeredRow } from '#archive/core/ledgeredRow.ts'
import { archiveInMemory, morning } from '../storedStudy.ts'

const row = {
  kind: 'weights',
  recordedAt: morning,
  sql: 'INSERT INTO weight_set (recorded_at, by, weights) VALUES (@recordedAt, @by, @weights)',
  values: { recordedAt: morning, by: 'bench', weights: '[]' },
  content: (_database: unknown, id: number) => ({ weightSetId: id }),
} as const
const count = (database: ReturnType<typeof archiveInMemory>, table: string) =>
  database.prepare(`SELECT count(*) FROM ${table}`).pluck().get()

test('stores the row and its entry in the ledger together', () => {
  const database = archiveInMemory()
  expect(addLedgeredRow(database, row)).toEqual({ id: 1, content: { weightSetId: 1 } })
  expect(database.prepare('SELECT kind, record_id, recorded_at, content FROM ledger').all()).toEqual([
    { kind: 'weights', record_id: 1, recorded_at: morning, content: '{"weightSetId":1}' },
  ])
})

test.each(['before', 'after'] as const)('stores neither when what comes %s throws', (when) => {
  const database = archiveInMemory()
  const refuse = () => {
    throw new RangeError('it may not be')
  }
  expect(() => addLedgeredRow(database, row, { [when]: refuse })).toThrow(/may not be/)
  expect([count(database, 'weight_set'), count(database, 'ledger')]).toEqual([0, 0])
})
