import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, test } from 'vitest'
import { changeFile, keepFile } from '#engine/keeping/keptFile.ts'
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

test('loses nothing of what programs keep at the same time', async () => {
  const file = join(temporaryFolder(), 'kept.json')
  keepFile(file, [])
  const module = new URL('../../../electron/engine/keeping/keptFile.ts', import.meta.url)
  const keepsMany = (name: string) => `
    import { readFileSync } from 'node:fs'
    const { changeFile } = await import(${JSON.stringify(module)})
    for (let i = 0; i < 200; i++)
      changeFile(${JSON.stringify(file)}, () => [...JSON.parse(readFileSync(${JSON.stringify(file)}, 'utf8')), '${name}' + i])`
  const programs = ['a', 'b'].map((name) => spawn(process.execPath, ['--input-type=module', '-e', keepsMany(name)]))
  expect(await Promise.all(programs.map((program) => once(program, 'exit')))).toEqual([
    [0, null],
    [0, null],
  ])
  const expected = ['a', 'b'].flatMap((name) => Array.from({ length: 200 }, (_, i) => name + i))
  expect((JSON.parse(readFileSync(file, 'utf8')) as string[]).toSorted()).toEqual(expected.toSorted())
  expect(readdirSync(dirname(file))).toEqual(['kept.json'])
})

test('takes the turn of a program that ended within its own, and keeps nothing where that is no file', () => {
  const file = join(temporaryFolder(), 'kept.json')
  writeFileSync(`${file}-turn`, '1')
  changeFile(file, () => ['a'])
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(['a'])
  expect(readdirSync(dirname(file))).toEqual(['kept.json'])
  mkdirSync(`${file}-turn`)
  expect(() => changeFile(file, () => ['b'])).toThrow()
  expect(JSON.parse(readFileSync(file, 'utf8'))).toEqual(['a'])
})
