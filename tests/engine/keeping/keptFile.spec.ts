import { mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, test } from 'vitest'
import { keepFile } from '#engine/keeping/keptFile.ts'
import { temporaryFolder } from '../../archive/storedStudy.ts'

test('replaces the file as a whole, for its owner alone, and makes its folder', () => {
  const file = join(temporaryFolder(), 'program', 'kept.json')
  keepFile(file, ['a', 'longer one'])
  keepFile(file, ['b'])
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(['b'])
  expect(readdirSync(dirname(file))).toEqual(['kept.json'])
  if (process.platform !== 'win32') expect(statSync(file).mode & 0o077).toBe(0)
})

test('leaves nothing beside the file where it cannot be replaced', () => {
  const file = join(temporaryFolder(), 'kept.json')
  mkdirSync(file)
  expect(() => keepFile(file, ['a'])).toThrow()
  expect(readdirSync(dirname(file))).toEqual(['kept.json'])
})
