import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { fileAskedFor } from '#shells/fileAskedFor.ts'

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'breakledger-asked-'))
  onTestFinished(() => rmSync(made, { recursive: true, force: true }))
  return made
}

test('opens a file that is there, and none that is not: nothing is made by a slip of the pen', () => {
  const home = folder()
  writeFileSync(join(home, 'loft.breakledger'), '')
  expect(fileAskedFor(` ${join(home, 'loft.breakledger')} `, false)).toBe(join(home, 'loft.breakledger'))
  expect(fileAskedFor('~/loft.breakledger', false, home)).toBe(join(home, 'loft.breakledger'))
  expect(() => fileAskedFor(join(home, 'left.breakledger'), false)).toThrow('There is no file')
})

test('makes a new one under the usual ending, and never over a file that is there', () => {
  const home = folder()
  expect(fileAskedFor(join(home, 'loft'), true)).toBe(join(home, 'loft.breakledger'))
  expect(fileAskedFor(join(home, 'loft.db'), true)).toBe(join(home, 'loft.db'))
  writeFileSync(join(home, 'loft.breakledger'), '')
  expect(() => fileAskedFor(join(home, 'loft'), true)).toThrow('exists already')
})

test('asks for the whole path, as a page knows no folder to begin from', () => {
  for (const path of ['loft.breakledger', './loft.breakledger', ''])
    expect(() => fileAskedFor(path, true)).toThrow('does not say where the file lies')
})
