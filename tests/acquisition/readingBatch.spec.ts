import { expect, it } from 'vitest'
import { createReadingBatch } from '#acquisition/readingBatch.ts'

it('keeps readings in order through growth and starts afresh when cleared', () => {
  const batch = createReadingBatch()
  for (let i = 0; i < 1000; i++) batch.add(i, 10 * i, Number.NaN)
  expect(batch.count).toBe(1000)
  expect(batch.values.length).toBeGreaterThanOrEqual(1000)
  expect(batch.timeS.length).toBe(batch.values.length)
  expect([batch.values[999], batch.deviceTimeUs[999], batch.sequence[999]]).toEqual([999, 9990, Number.NaN])
  batch.clear()
  batch.add(7, 8, 9)
  expect([batch.count, batch.values[0], batch.sequence[0]]).toEqual([1, 7, 9])
})

it('leaves out readings that have no time', () => {
  const batch = createReadingBatch()
  for (let i = 0; i < 6; i++) {
    batch.add(i, 10 * i, 100 * i)
    batch.timeS[i] = i % 2 === 0 ? Number.NaN : i / 10
  }
  batch.dropUntimed()
  expect(batch.count).toBe(3)
  for (const [array, values] of [
    [batch.values, [1, 3, 5]],
    [batch.deviceTimeUs, [10, 30, 50]],
    [batch.sequence, [100, 300, 500]],
    [batch.timeS, [0.1, 0.3, 0.5]],
  ] as const)
    expect([...array.subarray(0, 3)]).toEqual(values)
})
