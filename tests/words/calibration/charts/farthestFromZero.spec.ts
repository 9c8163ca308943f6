import { expect, it } from 'vitest'
import { farthestFromZero } from '#words/calibration/charts/farthestFromZero.ts'

it('takes the value that lies farthest out on either side, the first of two alike', () => {
  const of = (values: number[]) => farthestFromZero([...values.entries()], ([, value]) => value)
  expect(of([1, -3, 2])).toEqual([1, -3])
  expect(of([2, -2])).toEqual([0, 2])
  expect(of([])).toBeNull()
})
