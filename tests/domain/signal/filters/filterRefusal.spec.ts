import { expect, test } from 'vitest'
import type { CurveFilter } from '#contract/breaks/curveFilter.ts'
import { filterRefusal } from '#domain/signal/filters/filterRefusal.ts'
import { stretchesBetweenGaps } from '#domain/signal/stream/stretches.ts'

const every = (intervalS: number, count = 500) => Float64Array.from({ length: count }, (_, i) => i * intervalS)
const refusal = (filter: CurveFilter, timeS: Float64Array) => filterRefusal(filter, stretchesBetweenGaps(timeS))

test.each([
  [60, 588],
  [180, 1760],
  [600, 5880],
  [1000, 9800],
] as const)('CFC %d wants ten samples a second for each Hz of it, and %d are too few', (frequencyClass, rateHz) => {
  const filter = { kind: 'cfc', frequencyClass } as const
  expect(refusal(filter, every(1 / (10 * frequencyClass)))).toBeNull()
  expect(refusal(filter, every(1 / rateHz))?.because).toBe(
    `CFC ${frequencyClass} needs ${10 * frequencyClass} samples a second, and this curve has ${rateHz}.`,
  )
})

test('says which filter a slow curve can take, and that one is taken', () => {
  const slow = every(1 / 80)
  const refused = refusal({ kind: 'cfc', frequencyClass: 60 }, slow)
  expect(refused?.cure).toContain('at most 32 Hz')
  expect(refusal({ kind: 'butterworth', cutoffHz: 32 }, slow)).toBeNull()
  expect(refusal({ kind: 'butterworth', cutoffHz: 33 }, slow)).toEqual({
    because: '33 Hz is too high for a curve of 80 samples a second.',
    cure: 'Take at most 32 Hz.',
  })
})

test.each([77.7, 83.33, 1013, 3333])('what is advised at %d samples a second is not refused', (rateHz) => {
  const timeS = every(1 / rateHz)
  const highest = Number(/[\d.]+(?= Hz)/.exec(refusal({ kind: 'butterworth', cutoffHz: rateHz }, timeS)!.cure)![0])
  expect(refusal({ kind: 'butterworth', cutoffHz: highest }, timeS)).toBeNull()
  const lowest = Number(/\d[\d.e-]+(?= Hz)/.exec(refusal({ kind: 'butterworth', cutoffHz: 1e-9 }, timeS)!.cure)![0])
  expect(refusal({ kind: 'butterworth', cutoffHz: lowest }, timeS)).toBeNull()
  const shortest = Number(/[\d.]+(?= s,)/.exec(refusal({ kind: 'moving-average', windowS: 1e-6 }, timeS)!.cure)![0])
  expect(refusal({ kind: 'moving-average', windowS: shortest }, timeS)).toBeNull()
})

test('refuses samples that come too unevenly for a low-pass, and sends to the moving average, which takes them', () => {
  const uneven = Float64Array.from({ length: 400 }, (_, i) => 0.01 * i + (i % 2 === 0 ? 0 : 0.003))
  for (const filter of [
    { kind: 'butterworth', cutoffHz: 5 },
    { kind: 'cfc', frequencyClass: 60 },
  ] as const)
    expect(refusal(filter, uneven)).toMatchObject({
      because: expect.stringMatching(/unevenly.*30 %/),
      cure: expect.stringContaining('moving average'),
    })
  expect(refusal({ kind: 'moving-average', windowS: 0.1 }, uneven)).toBeNull()
})

test('takes steps whose SD is below a quarter of their mean for even', () => {
  // Steps of 1 + 2 u and 1 − 2 u by turns: the SD is 2 u of the mean.
  const uneven = (u: number) => Float64Array.from({ length: 4000 }, (_, i) => 0.01 * (i + (i % 2 === 0 ? 0 : 2 * u)))
  expect(refusal({ kind: 'butterworth', cutoffHz: 5 }, uneven(0.12))).toBeNull()
  expect(refusal({ kind: 'butterworth', cutoffHz: 5 }, uneven(0.13))?.because).toContain('26 %')
})

test('a few samples between gaps do not decide', () => {
  const timeS = every(0.001, 60).map((time, i) => (i < 50 ? time : time + 0.1 + 0.0004 * (i - 50)))
  expect(refusal({ kind: 'cfc', frequencyClass: 60 }, timeS)).toBeNull()
})

test('refuses nothing of a curve of one sample or none', () => {
  for (const timeS of [every(1, 0), every(1, 1)])
    expect(refusal({ kind: 'butterworth', cutoffHz: 5 }, timeS)).toBeNull()
})

test('goes by the stretches that have an interval of their own', () => {
  const fast = { from: 0, to: 40, intervalS: 0.001, jitter: 0 }
  const cfc60 = { kind: 'cfc', frequencyClass: 60 } as const
  expect(filterRefusal(cfc60, [fast, { from: 40, to: 41, intervalS: 1, jitter: 0 }])).toBeNull()
  expect(filterRefusal(cfc60, [fast, { from: 40, to: 42, intervalS: 1, jitter: 0 }])?.because).toContain(
    'this curve has 1.',
  )
  expect(filterRefusal(cfc60, [{ from: 0, to: 1, intervalS: Number.NaN, jitter: 0 }])).toBeNull()
  expect(filterRefusal(cfc60, [{ ...fast, jitter: 0.25 }])).toBeNull()
})
