import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { takeProgramLock } from '#archive/core/programLock.ts'
import { temporaryFolder } from '../storedStudy.ts'

test('is held by one and can be taken again when released', () => {
  const path = join(temporaryFolder(), 'a.breakledger')
  const lock = takeProgramLock(path)
  expect(() => takeProgramLock(path)).toThrow(expect.objectContaining({ code: 'archive-in-use' }))
  lock.release()
  takeProgramLock(path).release()
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
