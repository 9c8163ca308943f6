import { expect, test } from 'vitest'
import { batchesOf } from '#engine/reevaluation/reevaluationBatches.ts'

const numbers = (count: number) => Array.from({ length: count }, (_, i) => i)

test('gathers all, in order, into batches of at most thirty-two', () => {
  const batches = [...batchesOf(numbers(70), () => 0)]
  expect(batches.flat()).toEqual(numbers(70))
  expect(batches.map((batch) => batch.length)).toEqual([32, 32, 6])
})

test('sends what there is after a quarter of a second', () => {
  let nowMs = 0
  function* slow() {
    for (const number of numbers(7)) {
      nowMs += 100
      yield number
    }
  }
  expect([...batchesOf(slow(), () => nowMs)].map((batch) => batch.length)).toEqual([3, 3, 1])
})

test('yields nothing of nothing', () => {
  expect([...batchesOf([], () => 0)]).toEqual([])
})

test('asks for no more than it yields', () => {
  let asked = 0
  function* counted() {
    for (const number of numbers(100)) {
      asked += 1
      yield number
    }
  }
  const batches = batchesOf(counted(), () => 0)
  batches.next()
  expect(asked).toBe(32)
})
