import { on } from 'node:events'
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { expect, test } from 'vitest'
import type { WorkerMessage } from '#engine/reevaluation/reevaluationThread.ts'
import { buildIfNeeded, projectFolder } from '#shells/start/build.ts'
import { fillWithBreaks, loadedCurves } from '#tests/fakes/loadedBreaks.ts'
import { temporaryFolder } from '../../archive/storedStudy.ts'

test('bundles the thread that evaluates again so that it runs by itself', async () => {
  await buildIfNeeded('threads')
  const path = join(temporaryFolder(), 'study.breakledger')
  const [curve] = loadedCurves({ scenario: 'brittle', rateHz: 20, seed: 3, breaks: 1, knocksPerHour: 0 })
  fillWithBreaks(path, 2, () => curve!)
  const worker = new Worker(join(projectFolder, 'dist/threads/reevaluationWorker.js'), {
    workerData: {
      opening: { path, program: 'test', instant: '2031-05-03T09:30:00.000Z' },
      order: { breakIds: [1, 2], calibrationId: null, settings: {} },
    },
  })
  const heard: WorkerMessage[] = []
  for await (const [message] of on(worker, 'message', { close: ['exit'] })) {
    heard.push(message)
    if (message.kind === 'results') worker.postMessage('stored')
  }
  // In one portion or in several, as the machine had time
  expect(heard.pop()).toMatchObject({ kind: 'done' })
  const results = heard.flatMap((message) => (message.kind === 'results' ? message.results : []))
  expect(results).toMatchObject(
    [1, 2].map((breakId) => ({ breakId, evaluation: { result: { peakN: curve!.result.peakN } } })),
  )
})
