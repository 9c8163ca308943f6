import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { rewriteTables } from '#archive/core/schema/rewriteTables.ts'
import { inTransaction } from '#archive/core/transaction.ts'

function shelf(): Database.Database {
  const database = new Database(':memory:')
  onTestFinished(() => void database.close())
  database.exec(`CREATE TABLE shelf (place TEXT CHECK (place IN ('top', 'middle')), width REAL);
    INSERT INTO shelf VALUES ('top', 1.5)`)
  return database
}

const rewriting = { table: 'shelf', from: "CHECK (place IN ('top', 'middle'))", to: "CHECK (place <> '')" }

test('puts another condition in force, and leaves the rows', () => {
  const database = shelf()
  inTransaction(database, () => rewriteTables(database, [rewriting]))
  database.exec("INSERT INTO shelf VALUES ('floor', 2)")
  expect(() => database.exec("INSERT INTO shelf VALUES ('', 2)")).toThrow(/CHECK constraint/)
  expect(database.prepare('SELECT * FROM shelf').raw().all()).toEqual([
    ['top', 1.5],
    ['floor', 2],
  ])
  expect(database.pragma('integrity_check', { simple: true })).toBe('ok')
})

test('refuses a text that does not hold the part, and lets go of the schema', () => {
  const database = shelf()
  const twice = () => inTransaction(database, () => rewriteTables(database, [rewriting, rewriting]))
  expect(twice).toThrow(/once in the text of shelf/)
  expect(() => database.exec("INSERT INTO shelf VALUES ('floor', 2)")).toThrow(/CHECK constraint/)
  expect(() => database.exec('UPDATE sqlite_schema SET sql = NULL')).toThrow(/may not be modified/)
})
