import { expect, it } from 'vitest'
import { steadyRange } from '#renderer/plots/recorded/slopePlot.ts'

it('keeps the slopes of the loading readable beside the fall at a break, which is left to run off', () => {
  const slopes = Float64Array.from({ length: 100 }, (_, i) => (i < 10 ? 0 : i < 98 ? 700 + i : -90_000))
  const { min, max } = steadyRange(slopes)
  expect(max).toBeGreaterThan(798)
  expect(max).toBeLessThan(2500)
  expect(min).toBeLessThan(0)
  expect(min).toBeGreaterThan(-2500)
})

it('reaches no farther than slopes that are all alike', () => {
  const { min, max } = steadyRange(Float64Array.of(700, 700, 700))
  expect(min).toBeLessThanOrEqual(0)
  expect(max).toBeCloseTo(770, 6)
})
