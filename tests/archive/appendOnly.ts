import type Database from 'better-sqlite3'
import { expect } from 'vitest'

/** Tries every way of changing and removing rows of a table that SQL has; none may do anything. */
export function expectAppendOnly(database: Database.Database, table: string, key: string): void {
  // As in a stranger's connection, where REPLACE fires no delete triggers.
  database.pragma('recursive_triggers = OFF')
  database.pragma('foreign_keys = OFF')
  const before = database.prepare(`SELECT * FROM ${table}`).all()
  expect(before.length).toBeGreaterThan(0)
  for (const text of [
    `UPDATE ${table} SET ${key} = ${key}`,
    `DELETE FROM ${table}`,
    `REPLACE INTO ${table} SELECT * FROM ${table}`,
    `INSERT OR REPLACE INTO ${table} SELECT * FROM ${table} LIMIT 1`,
  ])
    expect(() => database.exec(text), text).toThrow(/append-only/)
  expect(database.prepare(`SELECT * FROM ${table}`).all()).toEqual(before)
}
