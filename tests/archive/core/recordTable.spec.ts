import { expect, test } from 'vitest'
import { endTable, headerTable } from '#archive/breaks/breakHeaders.ts'
import { findRecord, readContent, readRecord, readRecords } from '#archive/core/recordTable.ts'
import { recordKinds } from '#archive/verify/recordKinds.ts'
import { archiveInMemory, storeBreak } from '../storedStudy.ts'

test('reads one record, or all that a query asks for, in its order', () => {
  const database = archiveInMemory()
  for (let i = 0; i < 3; i++) storeBreak(database, null)
  expect(readRecord(database, headerTable, 2)).toMatchObject({ breakId: 2, tare: null, readingUnit: 'counts' })
  const rest = 'WHERE break_id <> ? ORDER BY break_id DESC'
  expect(readRecords(database, headerTable, rest, 2).map(({ breakId }) => breakId)).toEqual([3, 1])
})

test('says by its own noun what is not there, where it must be', () => {
  const database = archiveInMemory()
  expect(() => readRecord(database, headerTable, 7)).toThrow('There is no break 7 in this archive.')
  expect(findRecord(database, endTable, 7)).toBeNull()
})

test('adds no default to what is stored, and every default to what is read', () => {
  const database = archiveInMemory()
  storeBreak(database, null)
  database.exec('DROP TRIGGER break_header_is_never_changed')
  database.exec(`UPDATE break_header SET settings = '{}'`)
  expect(readContent(database, headerTable, 1)).toMatchObject({ settings: {} })
  expect(readRecord(database, headerTable, 1).settings).toMatchObject({ breakDropShare: 0.4 })
})

test('finds each record by its number in the table itself, without a search', () => {
  const database = archiveInMemory()
  const texts = [headerTable.texts.byId, endTable.texts.byId]
  for (const kind of recordKinds) if ('texts' in kind) texts.push((kind.texts as { byId: string }).byId)
  expect(texts).toHaveLength(recordKinds.length + 1)
  for (const text of texts) {
    const plan = database.prepare<[number], { detail: string }>(`EXPLAIN QUERY PLAN ${text}`).all(1)
    expect(
      plan.map(({ detail }) => detail),
      text,
    ).toEqual([expect.stringMatching(/^SEARCH \w+ USING INTEGER PRIMARY KEY/)])
  }
})
