import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { noteSchemaChange, takeSchema } from '#archive/core/schema/takeSchema.ts'

function shelf(): Database.Database {
  const database = new Database(':memory:')
  onTestFinished(() => void database.close())
  database.exec('CREATE TABLE shelf (place TEXT); CREATE INDEX shelf_by_place ON shelf (place)')
  return database
}

test('lets the schema be written until it is let go, and has it read again then', () => {
  const database = shelf()
  const schema = takeSchema(database)
  database.exec("UPDATE sqlite_schema SET sql = 'CREATE TABLE shelf (spot TEXT)' WHERE name = 'shelf'")
  database.exec("UPDATE sqlite_schema SET sql = 'CREATE INDEX shelf_by_place ON shelf (spot)' WHERE type = 'index'")
  schema.letGo()
  expect(database.prepare('SELECT spot FROM shelf').all()).toEqual([])
  expect(() => database.exec("DELETE FROM sqlite_schema WHERE type = 'index'")).toThrow(/may not be modified/)
})

test('moves the number of the schema', () => {
  const database = shelf()
  const before = Number(database.pragma('schema_version', { simple: true }))
  const schema = takeSchema(database)
  noteSchemaChange(database)
  schema.letGo()
  expect(database.pragma('schema_version', { simple: true })).toBe(before + 1)
})
