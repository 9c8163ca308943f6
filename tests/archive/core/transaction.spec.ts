import { expect, test } from 'vitest'
import { inTransaction } from '#archive/core/transaction.ts'
import { archiveInMemory } from '../storedStudy.ts'

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
