import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test, vi } from 'vitest'
import { projectFolder } from '#shells/start/build.ts'

const names = ['archiveWorker', 'reevaluationWorker', 'findingsWorker', 'climateWorker'] as const

/** The module under test over threads that are only noted; `present` says which files are there. */
async function overNotedThreads(present: typeof existsSync) {
  const started: { file: string; workerData: unknown }[] = []
  class NotedThread {
    constructor(file: string, { workerData }: { workerData: unknown }) {
      started.push({ file, workerData })
    }
  }
  vi.resetModules()
  vi.doMock('node:worker_threads', () => ({ Worker: NotedThread }))
  vi.doMock('node:fs', () => ({ existsSync: present }))
  onTestFinished(() => {
    vi.doUnmock('node:worker_threads')
    vi.doUnmock('node:fs')
    vi.resetModules()
  })
  const { startThread } = await import('#archive/startThread.ts')
  return { startThread, started }
}

describe('a thread of the program', () => {
  test.each(names)('runs a built file when the program runs from source: %s', async (name) => {
    const { startThread, started } = await overNotedThreads(existsSync)
    startThread(name, { path: 'x' })
    expect(started).toEqual([{ file: join(projectFolder, `dist/threads/${name}.js`), workerData: { path: 'x' } }])
  })

  test('says what to do when it was not built', async () => {
    const { startThread, started } = await overNotedThreads(() => false)
    expect(() => startThread('archiveWorker', {})).toThrow(
      expect.objectContaining({ code: 'internal', hint: expect.stringContaining('npm run build') }),
    )
    expect(started).toEqual([])
  })
})
