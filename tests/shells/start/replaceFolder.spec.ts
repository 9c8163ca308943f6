import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { replaceFolder } from '#shells/start/replaceFolder.ts'

let home = ''
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'breakledger-replace-'))
})
afterEach(() => rmSync(home, { recursive: true }))

function folderWith(name: string, file: string): string {
  const folder = join(home, name)
  mkdirSync(folder)
  writeFileSync(join(folder, file), name)
  return folder
}

test('the new files stand where the old ones stood, and nothing else is left', () => {
  const place = folderWith('page', 'old.js')
  // Left by a build that was ended in the middle.
  folderWith('new-old', 'half.js')
  replaceFolder(folderWith('new', 'index.html'), place)
  expect(readdirSync(home)).toEqual(['page'])
  expect(readdirSync(place)).toEqual(['index.html'])
  expect(readFileSync(join(place, 'index.html'), 'utf8')).toBe('new')
})

test('a first build has nothing to replace', () => {
  const place = join(home, 'page')
  replaceFolder(folderWith('new', 'index.html'), place)
  expect(existsSync(join(place, 'index.html'))).toBe(true)
})
