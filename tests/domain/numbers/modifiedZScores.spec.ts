import { expect, test } from 'vitest'
import { modifiedZScores } from '#domain/numbers/modifiedZScores.ts'

test('are those of scipy, on data that NIST/SEMATECH e-Handbook 1.3.5.17.1 prints', () => {
  // Tietjen and Moore 1972. scipy 1.17.1: 0.6745 * (x - numpy.median(x)) / stats.median_abs_deviation(x)
  const values = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57]
  const expected = [
    -1.3964522613065278, -1.2473165829145694, -0.7999095477386944, -0.3728391959799055, 0.37283919597988624,
    0.3931758793969723, 0.5490904522613056, 29.96271356783905,
  ]
  const scores = modifiedZScores(values)!
  for (const [i, score] of expected.entries()) expect(scores[i]).toBeCloseTo(score, 10)
})

test('do not change with the unit or the zero of the values', () => {
  const values = [12.1, 9.8, 11.4, 10.6, 13, 48.9, 10.9]
  const scores = modifiedZScores(values)!
  const others = modifiedZScores(values.map((value) => 250 - 3 * value))!
  for (const [i, score] of scores.entries()) expect(others[i]).toBeCloseTo(-score, 9)
})

test('there are none where more than half of the values are the same, even with the dust of rounding on them', () => {
  expect(modifiedZScores([5, 5, 5, 5, 900])).toBeNull()
  expect(modifiedZScores([0.3, 0.1 + 0.2, 0.3, 0.1 + 0.2, 0.3, 7])).toBeNull()
  expect(modifiedZScores([0, 0, 0, 1])).toBeNull()
})
