import { statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { inTransaction, inTransactionSyncedLater } from '#archive/core/transaction.ts'
import { archiveInMemory, temporaryFolder } from '../storedStudy.ts'

test('does all or nothing, and is a part of the transaction around it', () => {
  const database = archiveInMemory()
  const store = (name: string) => database.prepare("INSERT INTO preference VALUES (?, '1')").run(name)
  const names = () => database.prepare('SELECT name FROM preference ORDER BY name').pluck().all()
  const fail = (name: string) =>
    inTransaction(database, () => {
      store(name)
      throw new RangeError('no')
    })
  expect(inTransaction(database, () => store('a').changes)).toBe(1)
  expect(() => fail('b')).toThrow('no')
  inTransaction(database, () => {
    store('c')
    expect(() => fail('d')).toThrow('no')
  })
  expect(names()).toEqual(['a', 'c'])
})

// 1 is NORMAL, 2 is FULL (SQLite, PRAGMA synchronous).
const modeOf = (database: Database.Database) => [
  database.pragma('synchronous', { simple: true }),
  database.pragma('wal_autocheckpoint', { simple: true }),
]
const waiting = [2, 1000]

function shelf() {
  const path = join(temporaryFolder(), 'shelf')
  const [writer, reader] = [new Database(path), new Database(path)] as const
  onTestFinished(() => {
    reader.close()
    writer.close()
  })
  writer.pragma('journal_mode = WAL')
  writer.pragma('synchronous = FULL')
  writer.exec('CREATE TABLE shelf (place BLOB)')
  return { path, writer, count: () => reader.prepare('SELECT count(*) FROM shelf').pluck().get() }
}

test('is in the file when it returns, without waiting for the disk', () => {
  const { writer, count } = shelf()
  const within = inTransactionSyncedLater(writer, () => {
    writer.exec("INSERT INTO shelf VALUES (x'01')")
    return modeOf(writer)
  })
  expect(within).toEqual([1, 0])
  expect(count()).toBe(1)
  expect(modeOf(writer)).toEqual(waiting)
})

test('leaves nothing of work that fails, and waits for the disk again', () => {
  const { writer, count } = shelf()
  const work = () => {
    writer.exec("INSERT INTO shelf VALUES (x'01')")
    throw new RangeError('half-way')
  }
  expect(() => inTransactionSyncedLater(writer, work)).toThrow('half-way')
  expect(count()).toBe(0)
  expect(modeOf(writer)).toEqual(waiting)
})

test('is a part of the transaction around it, and as safe', () => {
  const { writer } = shelf()
  const within = inTransaction(writer, () => inTransactionSyncedLater(writer, () => modeOf(writer)))
  expect(within).toEqual(waiting)
})

test('brings no journal into the file, however long it is; the next commit of another kind does', () => {
  const { path, writer } = shelf()
  writer.pragma('wal_checkpoint(TRUNCATE)')
  const before = statSync(path).size
  const megabytes = 'INSERT INTO shelf VALUES (zeroblob(6000000))'
  inTransactionSyncedLater(writer, () => writer.exec(megabytes))
  expect(statSync(path).size).toBe(before)
  inTransaction(writer, () => writer.exec("INSERT INTO shelf VALUES (x'01')"))
  expect(statSync(path).size).toBeGreaterThan(before + 6_000_000)
})
