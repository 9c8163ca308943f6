import { expect, test } from 'vitest'
import { comparisonGrid, leastReaching } from '#domain/signal/compare/comparisonGrid.ts'

test.each([
  [3, 3],
  [5, 3],
  [7, 4],
  [12, 6],
])('of %i curves, %i have a median: half of them, and three at least', (curves, least) =>
  expect(leastReaching(curves)).toBe(least),
)

test('covers what at least half of the curves reach', () => {
  const grid = comparisonGrid(Array.from({ length: 9 }, (_, i) => ({ from: -i, to: 10 + i })))
  // Five of nine: the fifth lowest of the ends is -4, the fifth highest 14.
  expect([grid[0], grid.at(-1)]).toEqual([-4 + 0, 14].map((end) => expect.closeTo(end, 2)))
})

test('covers what at least three curves reach, in equal steps, with 0 among them', () => {
  const grid = comparisonGrid([
    { from: -1000, to: 5000 },
    { from: -9, to: 2 },
    { from: -10.3, to: 1.1 },
    { from: -8, to: 0.7 },
    { from: -2, to: 0.5 },
  ])
  expect(grid.length).toBeGreaterThan(3990)
  // Third lowest and third highest of the ends, less than a step from each.
  expect(grid[0]).toBeGreaterThanOrEqual(-9)
  expect(grid[0]).toBeLessThan(-9 + 0.003)
  expect(grid.at(-1)).toBeLessThanOrEqual(1.1)
  expect(grid.at(-1)).toBeGreaterThan(1.1 - 0.003)
  expect(grid.indexOf(0)).toBeGreaterThan(0)
  expect(Object.is(grid[grid.indexOf(0)], 0)).toBe(true)
  for (let i = 1; i < grid.length; i++) expect(grid[i]! - grid[i - 1]!).toBeCloseTo(10.1 / 4000, 10)
})

test('covers all that any reaches where there are fewer than three', () => {
  const grid = comparisonGrid([
    { from: -4, to: 4 },
    { from: -1, to: 6 },
  ])
  expect([grid[0], grid.at(-1)]).toEqual([-4, 6])
})

test('rises also where it lies far from 0', () => {
  const grid = comparisonGrid([{ from: 1e6, to: 1e6 + 1 }])
  expect(grid.every((x, i) => i === 0 || x > grid[i - 1]!)).toBe(true)
})

test('is empty where nothing is to be compared', () => {
  expect(comparisonGrid([])).toHaveLength(0)
  expect(comparisonGrid([{ from: 2, to: 2 }])).toHaveLength(0)
  const apart = [0, 10, 20].map((from) => ({ from, to: from + 1 }))
  expect(comparisonGrid(apart)).toHaveLength(0)
})

test('refuses an extent that is not finite', () => {
  expect(() => comparisonGrid([{ from: Number.NaN, to: 1 }])).toThrow(RangeError)
})
