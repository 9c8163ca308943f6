import { EventEmitter } from 'node:events'
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import { beforeAll, expect, onTestFinished, test, vi } from 'vitest'
import { detectionMethod } from '#domain/signal/loading/evaluateCurve.ts'
import type { Reevaluated } from '#engine/reevaluation/reevaluateBreaks.ts'
import { reevaluationThread } from '#engine/reevaluation/reevaluationThread.ts'
import { fillWithBreaks, loadedCurves } from '#tests/fakes/loadedBreaks.ts'
import { temporaryFolder } from '../../archive/storedStudy.ts'

const breaks = 200
const everyBreak = Array.from({ length: breaks }, (_, i) => i + 1)
const order = { breakIds: everyBreak, calibrationId: null, settings: {} }
const facts = { program: 'test', instant: '2031-05-03T09:30:00.000Z' }
let curves: ReturnType<typeof loadedCurves> = []
beforeAll(() => {
  curves = loadedCurves({ scenario: 'brittle', rateHz: 20, seed: 3, breaks: 1, knocksPerHour: 0 })
})

function filled(): string {
  const path = join(temporaryFolder(), 'study.breakledger')
  fillWithBreaks(path, breaks, () => curves[0]!)
  return path
}

test('gives every result in batches, each as it was found at capture', async () => {
  const results: Reevaluated[] = []
  const { signal } = new AbortController()
  for await (const batch of reevaluationThread({ path: filled(), ...facts }, order, signal)) {
    expect(batch.length).toBeLessThanOrEqual(32)
    results.push(...batch)
  }
  expect(results.map(({ breakId }) => breakId)).toEqual(everyBreak)
  for (const { breakId, evaluation } of results)
    expect(evaluation).toMatchObject({
      method: detectionMethod,
      besideId: breakId,
      result: { outcome: 'break', peakN: curves[0]!.result.peakN },
    })
})

test('waits while nobody takes its results, and ends when they are wanted no longer', async () => {
  const opening = { path: filled(), ...facts }
  const batches = reevaluationThread(opening, order, new AbortController().signal)
  const first = await batches.next()
  expect(first.value![0]).toMatchObject({ breakId: 1 })
  expect((await batches.return(undefined)).done).toBe(true)
  const abort = new AbortController()
  const aborted = reevaluationThread(opening, order, abort.signal)
  await aborted.next()
  abort.abort()
  await expect(
    (async () => {
      for (;;) if ((await aborted.next()).done) return
    })(),
  ).rejects.toMatchObject({ name: 'AbortError' })
  await setImmediate()
})

test('says why an archive cannot be read', async () => {
  const opening = { path: join(temporaryFolder(), 'none.breakledger'), ...facts }
  await expect(reevaluationThread(opening, order, new AbortController().signal).next()).rejects.toMatchObject({
    code: 'archive-missing',
  })
})

test('starts nothing for a signal that is aborted already', async () => {
  const opening = { path: 'nowhere', ...facts }
  await expect(reevaluationThread(opening, order, AbortSignal.abort()).next()).rejects.toMatchObject({
    name: 'AbortError',
  })
})

/** The module under test over a thread that does nothing but what the test makes it say. */
async function overScriptedThread() {
  const threads: EventEmitter[] = []
  class ScriptedThread extends EventEmitter {
    constructor() {
      super()
      threads.push(this)
    }
    postMessage() {}
    async terminate() {}
  }
  vi.resetModules()
  vi.doMock('node:worker_threads', () => ({ Worker: ScriptedThread }))
  onTestFinished(() => {
    vi.doUnmock('node:worker_threads')
    vi.resetModules()
  })
  const { reevaluationThread: scripted } = await import('#engine/reevaluation/reevaluationThread.ts')
  return { scripted, threads }
}

test('says that its thread failed or ended before it was done', async () => {
  const { scripted, threads } = await overScriptedThread()
  const next = () => scripted({ path: 'x', ...facts }, order, new AbortController().signal).next()
  const [failing, ending] = [next(), next()]
  threads[0]!.emit('error', new Error('no memory left'))
  threads[1]!.emit('exit', 1)
  await expect(failing).rejects.toThrow('no memory left')
  await expect(ending).rejects.toMatchObject({ code: 'internal', message: expect.stringMatching(/ended early/) })
})

test('is not brought down by a thread that fails when nobody listens to it any more', async () => {
  const { scripted, threads } = await overScriptedThread()
  const abort = new AbortController()
  const first = scripted({ path: 'x', ...facts }, order, abort.signal).next()
  threads[0]!.emit('message', { kind: 'results', results: [] })
  expect(await first).toEqual({ done: false, value: [] })
  abort.abort()
  await setImmediate()
  expect(() => threads[0]!.emit('error', new Error('too late'))).not.toThrow()
})
