import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { checkConsecutive, formatVersion, migrate, migrations } from '#archive/core/migrate.ts'

function emptyDatabase(): Database.Database {
  const database = new Database(':memory:')
  onTestFinished(() => void database.close())
  return database
}

const newest = migrations.length
const later = { number: newest + 1, title: 'a later one', sql: 'CREATE TABLE later (id INTEGER PRIMARY KEY) STRICT' }

test('has consecutive numbers', () => {
  expect(() => checkConsecutive(migrations)).not.toThrow()
})

test('refuses a list with a number missing or twice', () => {
  expect(() => checkConsecutive([...migrations, { ...later, number: newest + 2 }])).toThrow(/consecutive/)
  expect(() => checkConsecutive([...migrations, { ...later, number: newest }])).toThrow(/consecutive/)
})

test('applies only what an archive does not have yet, and notes when and by whom', () => {
  const database = emptyDatabase()
  migrate(database, migrations, 'old', '2031-01-01T00:00:00.000Z')
  migrate(database, [...migrations, later], 'new', '2036-01-01T00:00:00.000Z')
  expect(formatVersion(database)).toBe(migrations.length + 1)
  expect(database.prepare('SELECT * FROM format_history ORDER BY format_version').all()).toEqual([
    ...migrations.map(({ number }) => ({
      format_version: number,
      reached_at: '2031-01-01T00:00:00.000Z',
      program: 'old',
    })),
    { format_version: newest + 1, reached_at: '2036-01-01T00:00:00.000Z', program: 'new' },
  ])
})

test('leaves the archive as it was when a migration fails half-way', () => {
  const database = emptyDatabase()
  migrate(database, migrations, 'old', '2031-01-01T00:00:00.000Z')
  const broken = { ...later, sql: `${later.sql}; CREATE TABLE ledger (id INTEGER) STRICT` }
  expect(() => migrate(database, [...migrations, broken], 'new', '2036-01-01T00:00:00.000Z')).toThrow(/already exists/)
  expect(formatVersion(database)).toBe(newest)
  expect(database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'later'").get()).toBeUndefined()
})
