import { expect, test } from 'vitest'
import { windowRefusal } from '#domain/signal/filters/windowRefusal.ts'
import { stretchesBetweenGaps } from '#domain/signal/stream/stretches.ts'
import { limitOf } from '#tests/fakes/limitOf.ts'

const every = (intervalS: number, count = 500) => Float64Array.from({ length: count }, (_, i) => i * intervalS)
const refusal = (windowS: number, timeS: Float64Array) => windowRefusal(windowS, stretchesBetweenGaps(timeS))

test('a window of two intervals holds three samples and is enough', () => {
  expect(refusal(0.025, every(1 / 80))).toBeNull()
  expect(refusal(0.02, every(1 / 80))).toMatchObject({
    because: 'A window of 0.02 s is too short for samples that come every 0.0125 s.',
    cure: expect.stringContaining('at least 0.025 s'),
  })
})

test('what is advised is not refused', () => {
  for (const rateHz of [77.7, 83.33, 1013, 3333]) {
    const timeS = every(1 / rateHz)
    const advised = Number(/[\d.]+(?= s,)/.exec(refusal(1e-6, timeS)!.cure)![0])
    expect(refusal(advised, timeS)).toBeNull()
  }
})

test('a window as long as the curve is enough, and a longer one shows nothing', () => {
  const tenSeconds = every(0.1, 101)
  expect(refusal(10, tenSeconds)).toBeNull()
  const refused = refusal(100, tenSeconds)
  expect(refused).toMatchObject({
    because: expect.stringContaining('A window of 100 s is longer than this curve'),
    cure: expect.stringContaining('at most 10 s'),
  })
  // 83.33 Hz, 500 samples: 499 / 83.33 = 5.9882 s.
  const advised = Number(/[\d.]+(?= s;)/.exec(refusal(60, every(1 / 83.33))!.cure)![0])
  expect(advised).toBeGreaterThan(5.9)
  expect(advised).toBeLessThan(5.9882)
  expect(refusal(advised, every(1 / 83.33))).toBeNull()
})

test('the longest stretch between gaps decides', () => {
  const timeS = every(0.1, 101).map((time, i) => (i < 30 ? time : time + 5))
  expect(refusal(7, timeS)).toBeNull()
  expect(refusal(8, timeS)?.because).toContain('without a gap lasts 7 s')
})

test('of two samples asks for no less than three of them', () => {
  expect(refusal(2, every(1, 2))).toBeNull()
})

test('refuses nothing of a curve of one sample or none', () => {
  for (const count of [0, 1]) expect(refusal(1e-6, every(1, count))).toBeNull()
})

test('a hundredth past either limit is let pass', () => {
  // Samples every 0.1 s for 10 s: 0.2 s and 10 s.
  const fits = (windowS: number) => refusal(windowS, every(0.1, 101)) === null
  expect(limitOf(fits, 0.15, 5)).toBeCloseTo(0.198, 4)
  expect(limitOf(fits, 5, 15)).toBeCloseTo(10.1, 4)
})

test('a curve of less than a second is as short as it is', () => {
  expect(refusal(0.8, every(0.01, 51))?.because).toContain('lasts 0.5 s')
})

test('goes by the stretches that have an interval of their own', () => {
  const fast = { from: 0, to: 40, intervalS: 0.001, jitter: 0 }
  expect(windowRefusal(0.01, [fast, { from: 40, to: 41, intervalS: 1, jitter: 0 }])).toBeNull()
  expect(windowRefusal(0.01, [fast, { from: 40, to: 42, intervalS: 1, jitter: 0 }])?.because).toContain(
    'come every 1 s',
  )
})
