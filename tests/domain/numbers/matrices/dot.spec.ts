import { expect, test } from 'vitest'
import { dot } from '#domain/numbers/matrices/dot.ts'

test('adds the products of what stands at the same place', () => {
  expect(dot([1, 3, -5], [4, -2, -1])).toBe(3)
  expect(dot([], [])).toBe(0)
})

test('adds them from the first on, so that a sum is the same to the last bit wherever it is made', () => {
  expect(dot([1e16, 1, 1], [1, 1, 1])).toBe(1e16)
  expect(dot([1, 1, 1e16], [1, 1, 1])).toBe(1e16 + 2)
})
