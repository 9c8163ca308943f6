import { expect, it } from 'vitest'
import { changeToFind } from '#domain/findings/ageing/changeToFind.ts'

/** Eight values of mean 10 and SD 1. */
const eight = [-1.5, -1, -0.5, 0, 0, 0.5, 1, 1.5].map((z) => 10 + z)

it('is that of power.t.test for two ages of eight blocks', () => {
  // R 4.2.2: power.t.test(n = 8, sd = 1, power = 0.8, strict = TRUE, tol = 1e-12)$delta = 1.506634228, in percent of 10; the SD of the
  // eight is 1 (their squares add up to 7).
  expect(changeToFind([eight, eight], 0.95, 0.8)).toBeCloseTo(15.06634228, 6)
})

it('shrinks with the blocks of ages between, which know the spread too', () => {
  expect(changeToFind([eight, eight, eight], 0.95, 0.8)!).toBeLessThan(15.06634228)
})

it.each([
  ['one block at an end', [[9], eight]],
  [
    'no spread',
    [
      [9, 9],
      [9, 9],
    ],
  ],
  ['a first mean of 0', [[-1, 1], eight]],
])('is not known with %s', (_what, ages) => {
  expect(changeToFind(ages, 0.95, 0.8)).toBeNull()
})
