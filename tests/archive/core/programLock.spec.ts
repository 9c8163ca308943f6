import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { chmodSync, existsSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { expect, onTestFinished, test } from 'vitest'
import { takeProgramLock } from '#archive/core/programLock.ts'
import { temporaryFolder } from '../storedStudy.ts'

test('is held by one and can be taken again when released', () => {
  const path = join(temporaryFolder(), 'a.breakledger')
  const lock = takeProgramLock(path)
  expect(() => takeProgramLock(path)).toThrow(expect.objectContaining({ code: 'archive-in-use' }))
  lock.release()
  takeProgramLock(path).release()
})

test('is not kept by one that only reads the file of the lock', () => {
  const path = join(temporaryFolder(), 'a.breakledger')
  writeFileSync(`${path}-lock`, '')
  const reader = new Database(`${path}-lock`, { readonly: true })
  onTestFinished(() => void reader.close())
  reader.exec('BEGIN; SELECT count(*) FROM sqlite_schema')
  takeProgramLock(path).release()
})

test('leaves no file, and takes one that was left by a program that was killed', () => {
  const path = join(temporaryFolder(), 'a.breakledger')
  writeFileSync(`${path}-lock`, '')
  takeProgramLock(path).release()
  expect(existsSync(`${path}-lock`)).toBe(false)
})

test.runIf(process.platform !== 'win32')('may be opened by those who may write to the archive', () => {
  const path = join(temporaryFolder(), 'a.breakledger')
  writeFileSync(path, '')
  const modeFor = (mode: number) => {
    chmodSync(path, mode)
    const lock = takeProgramLock(path)
    const found = statSync(`${path}-lock`).mode & 0o777
    lock.release()
    return found
  }
  expect([0o600, 0o644, 0o664, 0o666].map(modeFor)).toEqual([0o600, 0o600, 0o660, 0o666])
})

test('is held against another process and let go of by the system when that one is killed', async () => {
  const path = join(temporaryFolder(), 'a.breakledger')
  const child = spawn(process.execPath, [join(import.meta.dirname, 'lockingChild.ts'), path], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  await once(child.stdout, 'data')
  expect(() => takeProgramLock(path)).toThrow(expect.objectContaining({ code: 'archive-in-use' }))
  child.kill('SIGKILL')
  await once(child, 'close')
  takeProgramLock(path).release()
})
