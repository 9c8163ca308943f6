import { Worker } from 'node:worker_threads'
import { expect, onTestFinished, test } from 'vitest'
import { buffersOf, connectWorker } from '#archive/core/workerProtocol.ts'
import { Trouble } from '#contract/errors.ts'

/** A worker that answers as the text says. */
function connect(text: string) {
  const worker = new Worker(`const { parentPort: port } = require('node:worker_threads'); ${text}`, { eval: true })
  onTestFinished(async () => void (await worker.terminate()))
  return connectWorker(worker)
}

const ready = `port.postMessage({ id: 0, kind: 'value' });`

test('answers each call with its own value, in whatever order they come', async () => {
  const { ready: begun, call } = connect(`${ready}
    const held = []
    port.on('message', (request) => {
      held.push(request)
      if (held.length === 2)
        for (const { id, method, args } of held.reverse()) port.postMessage({ id, kind: 'value', value: [method, ...args] })
    })`)
  await begun
  expect(await Promise.all([call('first', [1]), call('second', [2])])).toEqual([
    ['first', 1],
    ['second', 2],
  ])
})

test('passes progress on and turns a trouble back into one', async () => {
  const { call } = connect(`${ready}
    port.on('message', ({ id }) => {
      port.postMessage({ id, kind: 'progress', progress: 1 })
      port.postMessage({ id, kind: 'trouble', trouble: { code: 'disk-full', message: 'a', hint: 'b' } })
    })`)
  const seen: unknown[] = []
  await expect(call('x', [], (progress) => seen.push(progress))).rejects.toEqual(new Trouble('disk-full', 'a', 'b'))
  expect(seen).toEqual([1])
})

test('rejects what is open, and all that follows, when the worker fails, ends or is stopped', async () => {
  const failing = connect(`${ready} port.on('message', () => { throw new Error('out of memory') })`)
  await expect(failing.call('x', [])).rejects.toMatchObject({ code: 'internal', message: /out of memory/ })
  await expect(failing.call('x', [])).rejects.toMatchObject({ code: 'internal' })
  const ending = connect(`${ready} port.on('message', () => port.close())`)
  await expect(ending.call('x', [])).rejects.toMatchObject({ code: 'conflict', message: 'The archive is closed.' })
  const stopped = connect(`${ready} port.on('message', () => {})`)
  const open = expect(stopped.call('x', [])).rejects.toMatchObject({ code: 'cancelled' })
  await stopped.stop(new Trouble('cancelled', 'a', 'b'))
  await open
})

test('sends of a view its own part alone, and leaves what it was a part of with its owner', async () => {
  const { ready: begun, call } = connect(`${ready}
    port.on('message', ({ id, args }) => {
      const sizes = [args[0], args[1].times].map((view) => [view.length, view.buffer.byteLength])
      port.postMessage({ id, kind: 'value', value: sizes })
    })`)
  await begun
  const whole = Float64Array.of(1, 2, 3, 4)
  const part = whole.subarray(1, 3)
  expect(await call('x', [part, { times: part }])).toEqual([
    [2, 16],
    [2, 16],
  ])
  expect(whole).toHaveLength(4)
})

test('tells what a call touched before its promise resolves, and nothing where it touched nothing', async () => {
  const told: string[] = []
  const worker = new Worker(
    `const { parentPort: port } = require('node:worker_threads'); ${ready}
    port.on('message', ({ id, method }) =>
      port.postMessage({ id, kind: 'value', value: method, ...(method === 'write' ? { touched: ['break 1'] } : {}) }))`,
    { eval: true },
  )
  onTestFinished(async () => void (await worker.terminate()))
  const { call } = connectWorker(worker, (topics) => told.push(topics.join()))
  await call('read', []).then(() => told.push('read'))
  await call('write', []).then(() => told.push('written'))
  expect(told).toEqual(['read', 'break 1', 'written'])
})

test('finds the buffers that a result can hand over', () => {
  const times = Float64Array.of(1)
  expect(buffersOf({ times, total: 3, rows: [] })).toEqual([times.buffer])
  expect(buffersOf(undefined)).toEqual([])
})
