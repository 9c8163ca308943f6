import { expect, test } from 'vitest'
import { formatVersion, migrate, migrations } from '#archive/core/migrate.ts'
import { everyRow, olderArchive } from '../olderArchive.ts'

const later = '2032-01-01T00:00:00.000Z'

test('leaves every row as it was, and does not know which derivation made the lists', () => {
  const database = olderArchive(3)
  const { format_history: _history, ...before } = everyRow(database)
  migrate(database, migrations.slice(0, 4), 'newer', later)
  expect(formatVersion(database)).toBe(4)
  expect(everyRow(database, ['format_history'])).toEqual({ ...before, derivation: [] })
})

test('has room for one derivation only', () => {
  const database = olderArchive(3)
  migrate(database, migrations.slice(0, 4), 'newer', later)
  database.exec('INSERT INTO derivation VALUES (1, 1)')
  expect(() => database.exec('INSERT INTO derivation VALUES (2, 1)')).toThrow(/CHECK constraint/)
})
