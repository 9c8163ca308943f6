import { expect, test } from 'vitest'
import { windowRefusal } from '#domain/signal/filters/windowRefusal.ts'
import { stretchesBetweenGaps } from '#domain/signal/stretches.ts'

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

test('refuses nothing of a curve of one sample or none', () => {
  for (const count of [0, 1]) expect(refusal(1e-6, every(1, count))).toBeNull()
})
