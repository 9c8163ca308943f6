import { expect, test } from 'vitest'
import { outlyingCurves } from '#domain/signal/compare/outlyingCurves.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

test('points out a curve that lies far away, with the scores of scipy', () => {
  // scipy 1.17.1: 0.6745 * (d - numpy.median(d)) / stats.median_abs_deviation(d)
  const { scores, outlying, notJudged } = outlyingCurves([12.1, 9.8, 11.4, 10.6, 13, 48.9, 10.9])
  const expected = [0.5901875, -1.349, 0, -0.6745, 1.349, 31.6171875, -0.4215625]
  for (const [i, score] of expected.entries()) expect(scores![i]).toBeCloseTo(score, 10)
  expect(outlying).toEqual([false, false, false, false, false, true, false])
  expect(notJudged).toBeNull()
})

test('a curve that lies very near the median curve is none, however rare', () => {
  const { scores, outlying } = outlyingCurves([50, 51, 49, 50.5, 49.5, 1])
  expect(scores![5]).toBeLessThan(-3.5)
  expect(outlying).toEqual(Array(6).fill(false))
})

test('five are enough to point one out', () => {
  // scipy 1.17.1: 0.6745 * (d - numpy.median(d)) / stats.median_abs_deviation(d)
  const { scores, outlying } = outlyingCurves([11.4, 9.8, 12.1, 48.9, 10.6])
  const expected = [0, -1.349, 0.5901875, 31.6171875, -0.6745]
  for (const [i, score] of expected.entries()) expect(scores![i]).toBeCloseTo(score, 10)
  expect(outlying).toEqual([false, false, false, true, false])
})

test('points out nobody among fewer than five, and says so', () => {
  for (const distances of [[], [1], [1, 1, 1, 900]])
    expect(outlyingCurves(distances)).toMatchObject({
      scores: null,
      outlying: null,
      notJudged: 'too-few',
    })
})

test('judges five curves', () => {
  // By hand: median 3, MAD 1; 0.6745 x 897 is far above 3.5.
  expect(outlyingCurves([1, 2, 3, 4, 900]).outlying).toEqual([false, false, false, false, true])
})

test('points out nobody where more than half lie equally far, and says so', () => {
  expect(outlyingCurves([2, 2, 2, 2, 2, 900])).toMatchObject({
    scores: null,
    outlying: null,
    notJudged: 'all-alike',
  })
})

test('a curve is outlying above a score of 3.5', () => {
  // Of 1, 2, 3, 4 and x > 5 the median is 3 and the MAD 1: 0.6745 (x - 3) = 3.5 at x = 8.18903.
  const outlies = (distance: number) => outlyingCurves([1, 2, 3, 4, distance]).outlying![4]!
  expect(limitOf(outlies, 6, 12)).toBeCloseTo(3 + 3.5 / 0.6745, 4)
  const justAt = [1, 2, 3, 4, 8.189028910303929]
  expect(outlyingCurves(justAt).scores![4]).toBe(3.5)
  expect(outlyingCurves(justAt).outlying![4]).toBe(false)
})
