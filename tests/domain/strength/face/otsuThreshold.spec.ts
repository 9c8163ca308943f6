import { expect, it } from 'vitest'
import { otsuThreshold } from '#domain/strength/face/otsuThreshold.ts'

const spread = Array.from({ length: 400 }, (_, i) => ((i * 7919) % 1000) / 1000)

// scikit-image 0.26: filters.threshold_otsu(values, 256)
it.each([
  ['two of five low', spread.map((x, i) => (i % 5 < 2 ? x : 3 + 2 * x * x)), 1.0026470625],
  ['six values', [1, 2, 3, 10, 11, 12], 2.998046875],
  ['ten of four hundred high', spread.map((x, i) => (i < 390 ? x * x : 10 + x)), 1.0027890625],
])('of %s is the upper edge of the bin whose middle scikit-image names', (_what, values, expected) => {
  const halfABin = (Math.max(...values) - Math.min(...values)) / 512
  expect(otsuThreshold(values)).toBeCloseTo(expected + halfABin, 9)
})

it('is none of values that are all one', () => {
  expect(otsuThreshold([2, 2, 2])).toBeNull()
})

it('refuses no values', () => {
  expect(() => otsuThreshold([])).toThrow(RangeError)
})
