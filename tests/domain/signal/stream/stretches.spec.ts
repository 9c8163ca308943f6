import { expect, test } from 'vitest'
import { stretchesBetweenGaps } from '#domain/signal/stream/stretches.ts'

const every = (intervalS: number, count: number, startS = 0) =>
  Float64Array.from({ length: count }, (_, i) => startS + i * intervalS)

test('a curve without a gap is one stretch of its mean interval', () => {
  const stretches = stretchesBetweenGaps(every(0.0125, 1000))
  expect(stretches).toHaveLength(1)
  expect(stretches[0]).toMatchObject({ from: 0, to: 1000 })
  expect(stretches[0]!.intervalS).toBeCloseTo(0.0125, 12)
  expect(stretches[0]!.jitter).toBeLessThan(1e-10)
})

test('is cut where samples are missing, and only there', () => {
  const timeS = Float64Array.of(...every(0.001, 300), ...every(0.001, 200, 0.302), ...every(0.001, 500, 2))
  expect(stretchesBetweenGaps(timeS).map(({ from, to }) => [from, to])).toEqual([
    [0, 300],
    [300, 500],
    [500, 1000],
  ])
})

test('says of each stretch how uneven its steps are', () => {
  const timeS = Float64Array.of(...every(1, 10), ...every(1, 9, 20), 29.5, 31, 32)
  const [first, second] = stretchesBetweenGaps(timeS)
  // numpy 2.4.6: steps = numpy.diff([20, 21, ..., 28, 29.5, 31, 32]); numpy.std(steps) / numpy.mean(steps); numpy.mean(steps)
  expect(first!.jitter).toBeCloseTo(0, 12)
  expect(second!.jitter).toBeCloseTo(0.17677669529663687, 12)
  expect(second!.intervalS).toBeCloseTo(1.0909090909090908, 12)
})

test('a short stretch has the interval of the whole curve', () => {
  const timeS = Float64Array.of(...every(0.01, 100), 5, 5.004, ...every(0.01, 100, 9))
  const stretches = stretchesBetweenGaps(timeS)
  expect(stretches.map(({ to, from }) => to - from)).toEqual([100, 2, 100])
  expect(stretches[1]!.intervalS).toBeCloseTo(0.01, 4)
  expect(stretches[1]!.jitter).toBe(0)
})

test('takes a curve of one sample and of none', () => {
  expect(stretchesBetweenGaps(Float64Array.of())).toEqual([])
  expect(stretchesBetweenGaps(Float64Array.of(3))).toEqual([{ from: 0, to: 1, intervalS: Number.NaN, jitter: 0 }])
})

test('a stretch of ten samples has an interval of its own, one of nine that of the curve', () => {
  const after = (count: number) =>
    stretchesBetweenGaps(Float64Array.of(...every(0.01, 100), ...every(0.0105, count, 5)))[1]!.intervalS
  expect(after(10)).toBeCloseTo(0.0105, 9)
  expect(after(9)).toBeCloseTo(0.01, 4)
})

test('the first samples teach the usual step, wherever the curve begins', () => {
  const timeS = Float64Array.of(...every(0.01, 100, 3), ...every(0.01, 100, 4.5))
  expect(stretchesBetweenGaps(timeS).map(({ from, to }) => [from, to])).toEqual([
    [0, 100],
    [100, 200],
  ])
  // Gone for one sample only.
  expect(stretchesBetweenGaps(Float64Array.of(...every(0.01, 20), ...every(0.01, 20, 0.21)))).toHaveLength(2)
})
