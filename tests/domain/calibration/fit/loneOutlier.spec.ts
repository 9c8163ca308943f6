import { expect, test } from 'vitest'
import { hasLoneOutlier } from '#domain/calibration/fit/loneOutlier.ts'

// The others, 1 2 3 4 5, have mean 3 and sample SD sqrt(2.5) = 1.5811 (by hand): the limit lies 15.811 from 3.
test.each([
  [18.7, false],
  [18.9, true],
  [-12.7, false],
  [-12.9, true],
])('judges a value of %d beside 1 to 5 by ten SDs of the others', (value, found) => {
  expect(hasLoneOutlier([1, 2, value, 3, 4, 5])).toBe(found)
})

test('sees one glitch of a cheap converter among many readings, on a large offset too', () => {
  const quiet = Array.from({ length: 160 }, (_, i) => 8_000_000 + ((i * 7919) % 101) - 50)
  expect(hasLoneOutlier(quiet)).toBe(false)
  expect(hasLoneOutlier([...quiet, 8_000_000 + 100_000])).toBe(true)
})

test('finds none where the others do not scatter, or are too few', () => {
  expect(hasLoneOutlier([5, 5, 5, 5, 6])).toBe(false)
  expect(hasLoneOutlier([1, 2, 900, 3])).toBe(false)
  expect(hasLoneOutlier([])).toBe(false)
})

test('judges five values, in whatever unit and wherever they lie', () => {
  // The others, 1 2 3 4, have mean 2.5 and sample SD sqrt(5 / 3) = 1.291 (by hand): the limit lies 12.91 from 2.5.
  for (const [value, found] of [
    [15.3, false],
    [15.5, true],
    [-10.3, false],
    [-10.5, true],
  ] as const)
    for (const [unit, zero] of [
      [1, 0],
      [1e-4, 0],
      [1, 500],
      [1, -500],
    ] as const)
      expect(hasLoneOutlier([1, 2, value, 3, 4].map((one) => zero + unit * one))).toBe(found)
})
