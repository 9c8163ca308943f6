import { expect, test } from 'vitest'
import { curveOnGrid } from '#domain/signal/compare/curveOnGrid.ts'
import { stretchesBetweenGaps } from '#domain/signal/stream/stretches.ts'

const always = { fromS: Number.NEGATIVE_INFINITY, toS: Number.POSITIVE_INFINITY }
const plain = { originS: 0, timeUnit: 1, forceUnit: 1 }
function onGrid(timeS: number[], force: number[], grid: number[], axes = plain, loaded = always) {
  const times = Float64Array.from(timeS)
  return curveOnGrid(times, (i) => force[i]!, stretchesBetweenGaps(times), axes, loaded, Float64Array.from(grid))
}

test('is numpy.interp within the curve, and nothing outside', () => {
  // numpy 2.4.6: numpy.interp([0, 0.5, 1.25, 2, 2.75], [0, 1, 2, 3], [0, 10, 5, 7])
  const values = onGrid([0, 1, 2, 3], [0, 10, 5, 7], [-1, 0, 0.5, 1.25, 2, 2.75, 3, 3.01])
  expect([...values]).toEqual([Number.NaN, 0, 5, 8.75, 5, 6.5, 7, Number.NaN])
})

test('lays the curve on its axes', () => {
  // By hand: at x = 50 % the time is 2 + 50 * 0.02 = 3 s, where the force is 7; 7 / 0.1 = 70 %.
  const axes = { originS: 2, timeUnit: 0.02, forceUnit: 0.1 }
  const values = onGrid([0, 1, 2, 3], [0, 10, 5, 7], [0, 25, 50], axes)
  expect(values[0]).toBeCloseTo(50, 12)
  expect(values[1]).toBeCloseTo(60, 12)
  expect(values[2]).toBeCloseTo(70, 12)
})

test('says nothing before the specimen is loaded and after it has broken, to the very sample of the break', () => {
  // At 3 s it lets go: the straight line to what is left at 4 s is no load that it bore.
  const values = onGrid(
    [0, 1, 2, 3, 4],
    [0, 10, 20, 30, 2],
    [-1, -0.5, 0, 1, 2, 2.0001, 3],
    { ...plain, originS: 1 },
    {
      fromS: 0.5,
      toS: 3,
    },
  )
  const none = Number.NaN
  expect([...values]).toEqual([none, 5, 10, 20, 30, none, none])
})

test('says nothing within a gap', () => {
  const timeS = [...Array.from({ length: 20 }, (_, i) => i), ...Array.from({ length: 20 }, (_, i) => 30 + i)]
  const values = onGrid(timeS, timeS, [18.5, 19, 19.5, 25, 29.9, 30, 30.5, 49, 49.1])
  const none = Number.NaN
  expect([...values]).toEqual([18.5, 19, none, none, none, 30, 30.5, 49, none])
})

test('has at 0 the very peak of a curve that is aligned at its peak, however sharp', () => {
  const timeS = Array.from({ length: 1000 }, (_, i) => i * 0.001)
  const force = timeS.map((_, i) => (i === 777 ? 5432.1 : i < 777 ? i : 0))
  expect(onGrid(timeS, force, [-0.01, 0, 0.01], { ...plain, originS: timeS[777]! })[1]).toBe(5432.1)
})

test('asks for no more forces than it needs', () => {
  const times = Float64Array.from({ length: 100_000 }, (_, i) => i / 1000)
  let asked = 0
  const forceAt = (i: number) => {
    asked += 1
    return i
  }
  const grid = Float64Array.from({ length: 100 }, (_, i) => i + 0.0005)
  const values = curveOnGrid(times, forceAt, stretchesBetweenGaps(times), plain, always, grid)
  expect(values[99]).toBeCloseTo(99_000.5, 6)
  expect(asked).toBe(200)
})

test('takes a curve of one sample and of none', () => {
  expect([...onGrid([1], [5], [0, 1, 2])]).toEqual([Number.NaN, 5, Number.NaN])
  expect([...onGrid([], [], [0])]).toEqual([Number.NaN])
})
