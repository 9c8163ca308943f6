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
    { format_version: newest, reached_at: '2031-01-01T00:00:00.000Z', program: 'old' },
    { format_version: newest + 1, reached_at: '2036-01-01T00:00:00.000Z', program: 'new' },
  ])
})

test('enters each format in the chain, with its moment', () => {
  const database = emptyDatabase()
  migrate(database, migrations, 'old', '2031-01-01T00:00:00.000Z')
  migrate(database, [...migrations, later], 'new', '2036-01-01T00:00:00.000Z')
  expect(database.prepare('SELECT seq, kind, record_id, recorded_at FROM ledger').raw().all()).toEqual([
    [1, 'format', newest, '2031-01-01T00:00:00.000Z'],
    [2, 'format', newest + 1, '2036-01-01T00:00:00.000Z'],
  ])
})

test('notes nothing where nothing was missing', () => {
  const database = emptyDatabase()
  migrate(database, migrations, 'old', '2031-01-01T00:00:00.000Z')
  migrate(database, migrations, 'new', '2036-01-01T00:00:00.000Z')
  expect(database.prepare('SELECT program FROM format_history').pluck().all()).toEqual(['old'])
})

test('leaves the archive as it was when a migration fails half-way', () => {
  const database = emptyDatabase()
  migrate(database, migrations, 'old', '2031-01-01T00:00:00.000Z')
  const broken = { ...later, sql: `${later.sql}; CREATE TABLE ledger (id INTEGER) STRICT` }
  expect(() => migrate(database, [...migrations, broken], 'new', '2036-01-01T00:00:00.000Z')).toThrow(/already exists/)
  expect(formatVersion(database)).toBe(newest)
  expect(database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'later'").get()).toBeUndefined()
})

test('runs the code of a migration after its text, on the rows that are there, and takes both back when it fails', () => {
  const database = emptyDatabase()
  migrate(database, [...migrations, later], 'old', '2031-01-01T00:00:00.000Z')
  database.exec('INSERT INTO later VALUES (1), (2)')
  const doubling = (run: (on: Database.Database) => void) => ({
    number: newest + 2,
    title: 'doubles',
    sql: 'CREATE TABLE doubled (id INTEGER PRIMARY KEY) STRICT',
    run,
  })
  const fill = (on: Database.Database) => void on.exec('INSERT INTO doubled SELECT 2 * id FROM later')
  const failing = doubling((on) => {
    fill(on)
    throw new RangeError('half-way')
  })
  expect(() => migrate(database, [...migrations, later, failing], 'new', '2036-01-01T00:00:00.000Z')).toThrow(
    /half-way/,
  )
  expect(formatVersion(database)).toBe(newest + 1)
  expect(database.prepare("SELECT 1 FROM sqlite_schema WHERE name = 'doubled'").get()).toBeUndefined()
  migrate(database, [...migrations, later, doubling(fill)], 'new', '2036-01-01T00:00:00.000Z')
  expect(database.prepare('SELECT id FROM doubled ORDER BY id').pluck().all()).toEqual([2, 4])
})
