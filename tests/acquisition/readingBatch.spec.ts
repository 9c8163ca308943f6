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
