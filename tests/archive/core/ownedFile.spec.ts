import { readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { makeFile, ownersOnly, permissionsOf, writersOf } from '#archive/core/ownedFile.ts'
import { temporaryFolder } from '../storedStudy.ts'

test.runIf(process.platform !== 'win32')('makes a file with the permissions asked for', () => {
  const folder = temporaryFolder()
  for (const mode of [0o600, 0o666]) {
    const path = join(folder, String(mode))
    makeFile(path, mode)
    expect(statSync(path).mode & 0o777).toBe(mode)
    expect(permissionsOf(path)).toBe(mode)
    expect(writersOf(path)).toBe(mode)
  }
})

test('leaves a file that is there as it is', () => {
  const path = join(temporaryFolder(), 'kept')
  writeFileSync(path, 'kept')
  makeFile(path, ownersOnly)
  expect(readFileSync(path, 'utf8')).toBe('kept')
})

test('takes what is not there for its owner alone', () => {
  const path = join(temporaryFolder(), 'missing')
  expect(permissionsOf(path)).toBe(ownersOnly)
  expect(writersOf(path)).toBe(ownersOnly)
})
