import { expect, it } from 'vitest'
import { createForceBatch } from '#acquisition/forceBatch.ts'
import { createReadingBatch } from '#acquisition/readingBatch.ts'

it('gives each sample of a batch its force, before and after tare, and its whole microseconds', () => {
  const forces = createForceBatch()
  const batch = createReadingBatch()
  // A second, larger batch needs more room than the first.
  for (const count of [3, 1000]) {
    batch.clear()
    for (let i = 0; i < count; i++) {
      batch.add(i, Number.NaN, Number.NaN)
      batch.timeS[i] = i / 1e4
    }
    const { timeUs, force, tared } = forces.fill(batch, (reading) => 2 * reading, 5)
    const last = count - 1
    expect([timeUs[last], force[last], tared[last]]).toEqual([100 * last, 2 * last, 2 * last - 5])
    expect([timeUs[1], force[1], tared[1]]).toEqual([100, 2, -3])
  }
})
