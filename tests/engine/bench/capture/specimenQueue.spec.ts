import { afterEach, beforeEach, expect, it } from 'vitest'
import { createSpecimenQueue } from '#engine/bench/capture/specimenQueue.ts'
import { addBlocks, temporaryArchive } from '#tests/fakes/temporaryArchive.ts'

let home: Awaited<ReturnType<typeof temporaryArchive>>
let changes = 0
beforeEach(async () => {
  home = await temporaryArchive()
  changes = 0
})
afterEach(() => home.remove())

const started = async (enabled = true) => {
  const queue = createSpecimenQueue(home.archive, enabled, () => changes++)
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

it('goes on by itself when a capture begins on a spent specimen, and only then', async () => {
  const [first, second] = await addBlocks(home.archive, ['A-1', 'A-2'])
  const queue = await started()
  expect(await queue.forCapture()).toBe(first)
  expect(await queue.forCapture()).toBe(first)
  await queue.spent(first!)
  expect(queue.current()?.specimenId).toBe(first)
  expect(await queue.forCapture()).toBe(second)
})

it('breaks a specimen again when it was taken on purpose', async () => {
  const [first] = await addBlocks(home.archive, ['A-1', 'A-2'])
  const queue = await started()
  await queue.spent(first!)
  await queue.take(first!)
  expect(await queue.forCapture()).toBe(first)
})

it('captures without a specimen when told to, and comes back with the next key', async () => {
  await addBlocks(home.archive, ['A-1', 'A-2'])
  const queue = await started()
  await queue.take(null)
  await queue.refresh()
  expect(await queue.forCapture()).toBeNull()
  await queue.goOn()
  expect(queue.current()?.fields.number).toBe('A-2')
})

it('refuses a specimen that does not exist and keeps the one at hand', async () => {
  const [first] = await addBlocks(home.archive, ['A-1'])
  const queue = await started()
  await expect(queue.take(99)).rejects.toMatchObject({ code: 'not-found' })
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
