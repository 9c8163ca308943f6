import { expect, it } from 'vitest'
import { momentsOf, varianceOf } from '#domain/numbers/moments.ts'

const alternating = (around: number, by: number) => [
  around,
  ...Array.from({ length: 1000 }, (_, i) => around + (i % 2 === 0 ? -by : by)),
]

// NIST StRD NumAcc1, 3 and 4: certified means and SDs (the data as the sets define them).
it.each([
  ['NumAcc1', [10000001, 10000003, 10000002], 10000002, 1],
  ['NumAcc3', alternating(1000000.2, 0.1), 1000000.2, 0.1],
  ['NumAcc4', alternating(10000000.2, 0.1), 10000000.2, 0.1],
])('the moments of %s are those that NIST certifies', (_name, values, mean, sd) => {
  const moments = momentsOf(values)
  expect(Math.abs(moments.mean / mean - 1)).toBeLessThan(1e-14)
  // The values themselves are rounded to a double: eight digits of the SD are left of NumAcc4.
  expect(Math.abs(Math.sqrt(varianceOf(moments)!) / sd - 1)).toBeLessThan(1e-8)
})

it('has no variance for one value, and refuses none', () => {
  expect(momentsOf([7])).toEqual({ n: 1, mean: 7, squares: 0 })
  expect(varianceOf(momentsOf([7]))).toBeNull()
  expect(() => momentsOf([])).toThrow(RangeError)
})
