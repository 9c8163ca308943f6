import { readdirSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, test } from 'vitest'
import { keepHead, readKeptHeads } from '#engine/keeping/keptHeads.ts'
import { temporaryFolder } from '../../archive/storedStudy.ts'

const head = (count: number) => ({ count, hash: 'a'.repeat(64), instant: '2031-05-02T09:30:00.000Z' })

test('keeps one head for each archive, in a file for its owner alone', () => {
  const file = join(temporaryFolder(), 'program', 'heads.json')
  expect(readKeptHeads(file)).toEqual({})
  keepHead(file, 'one', head(3))
  keepHead(file, 'other', head(7))
  keepHead(file, 'one', head(4))
  expect(readKeptHeads(file)).toEqual({ one: head(4), other: head(7) })
  expect(readdirSync(dirname(file))).toEqual(['heads.json'])
  if (process.platform !== 'win32') expect(statSync(file).mode & 0o077).toBe(0)
})

test('knows of one archive only that it lies in a place', () => {
  const file = join(temporaryFolder(), 'heads.json')
  keepHead(file, 'one', { ...head(3), path: '/study' })
  keepHead(file, 'two', { ...head(5), path: '/other' })
  keepHead(file, 'other', { ...head(7), path: '/study' })
  expect(readKeptHeads(file)).toEqual({
    one: head(3),
    two: { ...head(5), path: '/other' },
    other: { ...head(7), path: '/study' },
  })
})

test.each(['', 'null', '{"one": {"count": -1}}'])('takes nothing from a file that says "%s"', (text) => {
  const file = join(temporaryFolder(), 'heads.json')
  writeFileSync(file, text)
  expect(readKeptHeads(file)).toEqual({})
})
