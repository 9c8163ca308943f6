import { join } from 'node:path'
import { expect, test } from 'vitest'
import { findingsQuestion } from '#contract/findings/procedures.ts'
import { findingsThread } from '#engine/findings/findingsThread.ts'
import { buildIfNeeded } from '#shells/start/build.ts'
import { fillWithBreaks, loadedCurves } from '#tests/fakes/loadedBreaks.ts'
import { temporaryFolder } from '../../archive/storedStudy.ts'

const never = new AbortController().signal
const [curve] = loadedCurves({ scenario: 'brittle', rateHz: 20, seed: 3, breaks: 1, knocksPerHour: 0 })

async function filledArchive() {
  await buildIfNeeded('threads')
  const path = join(temporaryFolder(), 'study.breakledger')
  fillWithBreaks(path, 4, () => curve!)
  return {
    opening: { path, program: 'test', instant: '2031-05-03T09:30:00.000Z' },
    name: 'findings.of' as const,
    question: findingsQuestion.parse({}),
  }
}

test('answers in a thread of its own, and the second time without working anything out', async () => {
  const order = await filledArchive()
  const thread = findingsThread()
  const first = await thread.ask(order, never, () => {})
  expect(first.blocks).toHaveLength(4)
  expect(first.computed).toBeGreaterThan(0)
  expect(await thread.ask(order, never, () => {})).toEqual({ ...first, computed: 0 })
  await thread.close()
})

test('ends when it is stopped, and answers the next question in another', async () => {
  const order = await filledArchive()
  const thread = findingsThread()
  const stop = new AbortController()
  const asked = thread.ask(order, stop.signal, () => {})
  stop.abort()
  await expect(asked).rejects.toMatchObject({ name: 'AbortError' })
  expect((await thread.ask(order, never, () => {})).blocks).toHaveLength(4)
  await thread.close()
})

test('says what stands in the way of reading, and goes on', async () => {
  const order = await filledArchive()
  const thread = findingsThread()
  const missing = { ...order, opening: { ...order.opening, path: join(temporaryFolder(), 'none.breakledger') } }
  await expect(thread.ask(missing, never, () => {})).rejects.toMatchObject({ code: 'archive-missing' })
  expect((await thread.ask(order, never, () => {})).blocks).toHaveLength(4)
  await thread.close()
})

test('says of what is asked while it is closed, and after that, that it was given up', async () => {
  const order = await filledArchive()
  const thread = findingsThread()
  const asked = thread.ask(order, never, () => {})
  const closed = thread.close()
  await expect(asked).rejects.toMatchObject({ code: 'cancelled' })
  await closed
  await expect(thread.ask(order, never, () => {})).rejects.toMatchObject({ code: 'cancelled' })
})
