import { expect, it } from 'vitest'
import { minimumBetween } from '#domain/numbers/goldenMinimum.ts'

// The places follow from the derivatives.
it.each([
  ['a parabola', (x: number) => (x - 1.25) ** 2, -3, 7, 1.25],
  ['x less half its logarithm', (x: number) => Math.log(x) * -0.5 + x, 0.01, 5, 0.5],
  ['a corner', (x: number) => Math.abs(x - 2), 0, 10, 2],
])('finds the floor of %s', (_name, f, from, to, place) => {
  expect(Math.abs(minimumBetween(f, from, to, 1e-9) - place)).toBeLessThan(1e-7)
})

it('ends at the lower end of a slope', () => {
  expect(minimumBetween((x) => x, 3, 8, 1e-6)).toBeCloseTo(3, 4)
  expect(minimumBetween((x) => -x, 8, 3, 1e-6)).toBeCloseTo(8, 4)
})
