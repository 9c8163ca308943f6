import { expect, test } from 'vitest'
import { emptyBand, fillBand } from '#domain/signal/compare/medianBand.ts'

const none = Number.NaN
const rows = [
  [1, 2, 3, none, 5],
  [2, 4, 9, 1, none],
  [0, 1, 5, 7, none],
  [5, none, 2, 8, 1],
  [3, 3, 3, 2, 4],
  [9, 8, 1, none, none],
].map((row) => Float64Array.from(row))

test('is numpy.nanquantile at each place, with the count of the curves that reach it', () => {
  const band = emptyBand(5)
  fillBand(band, rows, 0, 5)
  // numpy 2.4.6: numpy.nanquantile(rows, p, axis=0)
  expect([...band.lower]).toEqual([1.25, 2, 2.25, 1.75, 2.5])
  expect([...band.median]).toEqual([2.5, 3, 3, 4.5, 4])
  expect([...band.upper]).toEqual([4.5, 4, 4.5, 7.25, 4.5])
  expect([...band.curvesAt]).toEqual([6, 5, 6, 4, 3])
})

test('is the same whether it is made at once or in parts', () => {
  const whole = emptyBand(5)
  fillBand(whole, rows, 0, 5)
  const parts = emptyBand(5)
  for (const [from, to] of [
    [0, 2],
    [2, 2],
    [2, 3],
    [3, 5],
  ] as const)
    fillBand(parts, rows, from, to)
  expect(parts).toEqual(whole)
})

test('has no median where fewer than half reach, though they are three', () => {
  const band = emptyBand(5)
  fillBand(band, [...rows, Float64Array.of(7, 6, none, none, 6), Float64Array.of(1, 2, none, none, none)], 0, 5)
  // numpy 2.4.6: numpy.nanquantile(rows + [[7, 6, nan, nan, 6], [1, 2, nan, nan, nan]], 0.5, axis=0)
  expect([...band.median]).toEqual([2.5, 3, 3, 4.5, 4.5])
  expect([...band.curvesAt]).toEqual([8, 7, 6, 4, 4])
  const more = emptyBand(5)
  fillBand(more, [...rows, Float64Array.of(none, none, none, none, none)], 0, 5)
  // Four of seven are half; at the last place there are three.
  expect([...more.median].map(Number.isNaN)).toEqual([false, false, false, false, true])
  expect(more.curvesAt[4]).toBe(3)
})

test('has no median where fewer than three curves reach, and says how many do', () => {
  const band = emptyBand(5)
  fillBand(band, rows.slice(0, 3), 0, 5)
  expect([...band.median]).toEqual([1, 2, 5, none, none])
  expect([...band.lower].slice(3)).toEqual([none, none])
  expect([...band.curvesAt]).toEqual([3, 3, 3, 2, 1])
})

test('ends before the place that it is made up to', () => {
  const band = emptyBand(5)
  fillBand(band, rows, 1, 3)
  expect([...band.median]).toEqual([none, 3, 3, none, none])
})
