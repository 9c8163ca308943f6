import { afterEach, beforeEach, expect, it } from 'vitest'
import type { SetAsideCause } from '#contract/breaks/decision.ts'
import { createSpecimenQueue } from '#engine/bench/capture/specimenQueue.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'
import { evaluationOf, header, morning, rampAndFall, session } from '../../../archive/storedStudy.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
let changes = 0
beforeEach(async () => {
  home = await temporaryArchive()
  changes = 0
})
afterEach(() => home.remove())

const started = async (enabled = true, invented = true) => {
  const queue = createSpecimenQueue(home.archive, { enabled, invented }, () => changes++)
  await queue.refresh()
  return queue
}
const numbers = (queue: Awaited<ReturnType<typeof started>>) => [
  queue.current()?.fields.number ?? null,
  queue.next()?.fields.number ?? null,
]

it('takes the first waiting specimen in the natural order of numbers', async () => {
  await addBlocks(home.archive, ['C1-10', 'C1-9', 'C1-11'])
  const queue = await started()
  expect(numbers(queue)).toEqual(['C1-9', 'C1-10'])
  expect(queue.waiting()).toBe(3)
  expect(changes).toBeGreaterThan(0)
})

it('goes on, past the last one back to the first that was passed over', async () => {
  await addBlocks(home.archive, ['A-1', 'A-2', 'A-3'])
  const queue = await started()
  await queue.goOn()
  expect(numbers(queue)).toEqual(['A-2', 'A-3'])
  await queue.goOn()
  expect(numbers(queue)).toEqual(['A-3', 'A-1'])
  await queue.goOn()
  expect(numbers(queue)).toEqual(['A-1', 'A-2'])
})

/** A break of that specimen, stored as such. */
async function storeBreak(specimenId: number): Promise<number> {
  const { sessionId } = await home.archive.beginSession(session)
  const { breakId } = await home.archive.beginBreak(header(sessionId, specimenId))
  const curve = rampAndFall(1000, 60_000)
  await home.archive.appendSamples(breakId, curve)
  await home.archive.finishBreak(breakId, morning, 'complete', 0, evaluationOf(curve))
  return breakId
}
const setAside = (breakId: number, cause: SetAsideCause) =>
  home.archive.addDecision({
    ...{ breakId, recordedAt: morning, by: 'bench', reason: 'seen', specimenId: null },
    ...{ kind: 'set-aside', cause },
  })

it('goes on by itself when a capture begins on a spent specimen, and only then', async () => {
  const [first, second] = await addBlocks(home.archive, ['A-1', 'A-2'])
  const queue = await started()
  expect(await queue.forCapture()).toBe(first)
  expect(await queue.forCapture()).toBe(first)
  await storeBreak(first!)
  await queue.spent(first!)
  expect(queue.current()?.specimenId).toBe(first)
  expect(await queue.forCapture()).toBe(second)
})

it('takes a specimen for broken as soon as it broke, however long the disk takes to store it', async () => {
  const [first, second, third] = await addBlocks(home.archive, ['A-1', 'A-2', 'A-3'])
  const queue = await started()
  expect(await queue.forCapture()).toBe(first)
  queue.broke(Promise.resolve(first!))
  expect(await queue.forCapture()).toBe(second)
  queue.broke(Promise.resolve(second!))
  expect(await queue.forCapture()).toBe(third)
  queue.broke(Promise.resolve(third!))
  expect(await queue.forCapture()).toBeNull()
})

it('breaks a specimen again only when that was said', async () => {
  const [first] = await addBlocks(home.archive, ['A-1', 'A-2'])
  await storeBreak(first!)
  const queue = await started()
  await expect(queue.take(first!, false)).rejects.toMatchObject({ code: 'conflict' })
  expect(queue.current()?.fields.number).toBe('A-2')
  await queue.take(first!, true)
  expect(queue.again()).toBe(true)
  expect(await queue.forCapture()).toBe(first)
  await storeBreak(first!)
  await queue.spent(first!)
  expect(queue.again()).toBe(false)
  await queue.goOnIfSpent()
  expect(queue.current()?.fields.number).toBe('A-2')
})

it('brings no specimen back whose break was set aside, unless another block was broken in its place', async () => {
  const [slipped, wrong] = await addBlocks(home.archive, ['A-1', 'A-2', 'A-3'])
  await setAside(await storeBreak(slipped!), 'specimen-slipped')
  await setAside(await storeBreak(wrong!), 'wrong-block')
  const queue = await started()
  expect(numbers(queue)).toEqual(['A-2', 'A-3'])
  expect(queue.waiting()).toBe(2)
})

it('goes on from a specimen that became a broken one at hand, when a break was given to it', async () => {
  const [first, second] = await addBlocks(home.archive, ['A-1', 'A-2'])
  const queue = await started()
  await storeBreak(first!)
  await queue.refresh()
  expect(queue.current()?.specimenId).toBe(first)
  expect(await queue.forCapture()).toBe(second)
})

it('gives no invented specimen to a real press', async () => {
  const [invented] = await addBlocks(home.archive, ['A-1'])
  const queue = await started(true, false)
  expect(numbers(queue)).toEqual([null, null])
  expect(queue.waiting()).toBe(0)
  await expect(queue.take(invented!, true)).rejects.toMatchObject({ code: 'conflict' })
})

it('captures without a specimen when told to, and comes back with the next key', async () => {
  await addBlocks(home.archive, ['A-1', 'A-2'])
  const queue = await started()
  await queue.take(null, false)
  await queue.refresh()
  expect(await queue.forCapture()).toBeNull()
  await queue.goOn()
  expect(queue.current()?.fields.number).toBe('A-2')
})

it('refuses a specimen that does not exist and keeps the one at hand', async () => {
  const [first] = await addBlocks(home.archive, ['A-1'])
  const queue = await started()
  await expect(queue.take(99, false)).rejects.toMatchObject({ code: 'not-found' })
  expect(queue.current()?.specimenId).toBe(first)
})

it('picks up the first specimen that is added to an empty archive', async () => {
  const queue = await started()
  expect(numbers(queue)).toEqual([null, null])
  await addBlocks(home.archive, ['A-1'])
  await queue.refresh()
  expect(numbers(queue)).toEqual(['A-1', null])
})

it('hands out no specimen when captures belong to none', async () => {
  await addBlocks(home.archive, ['A-1'])
  const queue = await started(false)
  await queue.goOn()
  expect(await queue.forCapture()).toBeNull()
  expect(numbers(queue)).toEqual([null, null])
})
