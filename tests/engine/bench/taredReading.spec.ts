import { expect, test } from 'vitest'
import { taredN } from '#engine/bench/taredReading.ts'

const tare = { offset: 5, sd: 0.1, readings: 80, takenAt: '2031-05-02T09:30:00.000Z' }
const link = {
  tare: () => tare,
  scale: () => ({ kind: 'uncalibrated-scale', nPerCount: 0.01 }) as const,
  readingUnit: () => 'counts' as const,
}

test('a reading is told by how far it lies from the zero', () => {
  // 10,300 counts of 0.01 N are 103 N, 98 N above a zero of 5 N.
  expect(taredN(link, 10_300)).toBeCloseTo(98, 9)
})
test('nothing is said without a zero or without a scale', () => {
  expect(taredN({ ...link, tare: () => null }, 10_300)).toBeNull()
  expect(taredN({ ...link, scale: () => ({ kind: 'none' }) }, 10_300)).toBeNull()
})
