import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
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

test('never writes over a file', () => {
  const file = join(temporaryFolder(), 'copy.breakledger')
  writeFileSync(file, 'kept')
  expect(() => verifiedCopy(archiveInMemory(), file)).toThrow(expect.objectContaining({ code: 'conflict' }))
})

test('leaves nothing behind when it cannot be written', () => {
  const file = join(temporaryFolder(), 'nowhere', 'copy.breakledger')
  expect(() => verifiedCopy(archiveInMemory(), file)).toThrow(/unable to open/)
  expect(existsSync(file)).toBe(false)
})
