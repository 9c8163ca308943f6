import { expect, it } from 'vitest'
import { midranksOf } from '#domain/numbers/midranks.ts'

it('gives equal values the mean of their ranks, as R rank does', () => {
  // R 4.2.2: rank(c(3, 1, 3, 2, 3, 1))
  expect([...midranksOf([3, 1, 3, 2, 3, 1]).ranks]).toEqual([5, 1.5, 5, 3, 5, 1.5])
})

it('sums t^3 - t over the ties', () => {
  expect(midranksOf([3, 1, 3, 2, 3, 1]).tieSum).toBe(24 + 6)
  expect(midranksOf([1, 2]).tieSum).toBe(0)
})
