import { chmodSync, existsSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { verifiedCopy } from '#archive/core/verifiedCopy.ts'
import { verify } from '#archive/verify/verify.ts'
import { archiveInMemory, storeBreak, temporaryFolder } from '../storedStudy.ts'

test('writes a copy that verifies like the original', () => {
  const database = archiveInMemory()
  storeBreak(database, null)
  const file = join(temporaryFolder(), 'copy.breakledger')
  verifiedCopy(database, file)
  const copy = new Database(file, { readonly: true })
  onTestFinished(() => void copy.close())
  expect(verify(copy, () => {})).toEqual(verify(database, () => {}))
  expect(copy.pragma('user_version', { simple: true })).toBe(database.pragma('user_version', { simple: true }))
})

test.runIf(process.platform !== 'win32')('is for the same people as the original', () => {
  const folder = temporaryFolder()
  const path = join(folder, 'shared.breakledger')
  const database = new Database(path)
  onTestFinished(() => void database.close())
  database.exec('CREATE TABLE shelf (id INTEGER)')
  for (const mode of [0o600, 0o640]) {
    chmodSync(path, mode)
    const copy = join(folder, `copy-${mode}.breakledger`)
    verifiedCopy(database, copy)
    expect(statSync(copy).mode & 0o777).toBe(mode)
  }
})

test('has its name only when it was proved, so that half a copy is never taken for one', () => {
  const database = archiveInMemory()
  const file = join(temporaryFolder(), 'copy.breakledger')
  const prepare = database.prepare.bind(database)
  const isThere: boolean[] = []
  database.prepare = ((text: string) => {
    if (/VACUUM|count/.test(text)) isThere.push(existsSync(file))
    return prepare(text)
  }) as typeof database.prepare
  verifiedCopy(database, file)
  expect(new Set(isThere)).toEqual(new Set([false]))
  expect(readdirSync(dirname(file))).toEqual(['copy.breakledger'])
})

test('never writes over a file', () => {
  const file = join(temporaryFolder(), 'copy.breakledger')
  writeFileSync(file, 'kept')
  expect(() => verifiedCopy(archiveInMemory(), file)).toThrow(expect.objectContaining({ code: 'conflict' }))
})

test('leaves nothing behind when it cannot be written', () => {
  const file = join(temporaryFolder(), 'nowhere', 'copy.breakledger')
  expect(() => verifiedCopy(archiveInMemory(), file)).toThrow(/no such file/)
  expect(existsSync(file)).toBe(false)
})
