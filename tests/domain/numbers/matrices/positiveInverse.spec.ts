import { expect, it } from 'vitest'
import { positiveInverse } from '#domain/numbers/matrices/positiveInverse.ts'

it('is the inverse that numpy finds', () => {
  // numpy 2: linalg.inv([[4, 1, 0.5], [1, 3, -1], [0.5, -1, 2]])
  const expected = [
    [0.3076923076923077, -0.15384615384615385, -0.15384615384615385],
    [-0.15384615384615385, 0.47692307692307695, 0.2769230769230769],
    [-0.15384615384615385, 0.2769230769230769, 0.676923076923077],
  ]
  const found = positiveInverse([
    [4, 1, 0.5],
    [1, 3, -1],
    [0.5, -1, 2],
  ])!
  for (const [i, row] of found.entries())
    for (const [j, value] of row.entries()) expect(value).toBeCloseTo(expected[i]![j]!, 12)
})

it('is none where the matrix is not positive definite', () => {
  expect(
    positiveInverse([
      [1, 2],
      [2, 1],
    ]),
  ).toBeNull()
  expect(positiveInverse([[0]])).toBeNull()
})
