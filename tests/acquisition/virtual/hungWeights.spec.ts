import { expect, test } from 'vitest'
import { createHungWeights } from '#acquisition/virtual/hungWeights.ts'

test('come to rest at the force that was hung, swinging a little on the way', () => {
  const weights = createHungWeights()
  expect([weights.hang(), weights.forceN(0)]).toEqual([false, 0])
  weights.put(10, 500)
  const early = Array.from({ length: 100 }, (_, i) => weights.forceN(10 + i / 100))
  expect(early[0]).toBeCloseTo(0, 9)
  expect(Math.max(...early)).toBeGreaterThan(500)
  expect(Math.max(...early)).toBeLessThan(510)
  // After twelve time constants of the swing, 2 % of 500 N are below 0.0001 N.
  expect(weights.forceN(16)).toBeCloseTo(500, 3)
})

test('change from the force that hangs there, without a jump', () => {
  const weights = createHungWeights()
  weights.put(0, 500)
  const before = weights.forceN(0.1)
  weights.put(0.1, 800)
  expect(weights.forceN(0.1)).toBeCloseTo(before, 9)
})

test('never pull a free cell below zero', () => {
  const weights = createHungWeights()
  weights.put(0, 500)
  weights.put(20, 0)
  expect(weights.hang()).toBe(false)
  for (let timeS = 20; timeS < 25; timeS += 0.01) expect(weights.forceN(timeS)).toBeGreaterThanOrEqual(0)
  expect(weights.forceN(25)).toBeLessThan(0.001)
})
