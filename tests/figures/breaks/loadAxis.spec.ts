import { expect, it } from 'vitest'
import { loadAxis } from '#figures/breaks/loadAxis.ts'

it('holds zero and the highest, with a place above it for its name', () => {
  const { from, to, ticks } = loadAxis(0, 1000, 24)
  expect(from).toBeCloseTo(-40)
  expect(to).toBeCloseTo(1080)
  expect(ticks.map(({ value }) => value)).toContain(0)
})
it('gives noise below zero a little room, and a whole step to what lies far below', () => {
  expect(loadAxis(-10, 1000, 24).from).toBeCloseTo(-40)
  expect(loadAxis(-300, 1000, 24).from).toBeLessThanOrEqual(-300)
})
it('names fewer values where the plot is low', () =>
  expect(loadAxis(0, 1000, 10).ticks.length).toBeLessThan(loadAxis(0, 1000, 40).ticks.length))
