import { chiSquareUpperTail } from '../../numbers/distributions/chiSquare.ts'
import { median } from '../../numbers/quantile.ts'
import { type GroupValues, withinGroups, withMoments } from './groupValues.ts'
import { oneWayTest } from './meansTests.ts'
import { noTest, type TestOfGroups, testOrNone } from './testOfGroups.ts'

/** Distances that differ by no more than so many times the largest value differ by its rounding alone. */
const rounding = 4 * Number.EPSILON

/** One-way test of the distances of the values from a middle of their group; none where those of each group are equal, as of two values. */
function testOfDistances(groups: readonly GroupValues[], middleOf: (values: Float64Array) => number): TestOfGroups {
  const several = groups.filter(({ values }) => values.length > 1)
  const largest = several.reduce((most, { values }) => values.reduce((one, value) => Math.max(one, value), most), 0)
  const distances = several.map(({ group, values }) => {
    const middle = middleOf(values)
    return { group, values: values.map((value) => Math.abs(value - middle)) }
  })
  const { variance } = withinGroups(withMoments(distances, 1))
  return variance > (rounding * largest) ** 2 ? oneWayTest(distances) : noTest
}

/**
 * Brown and Forsythe's test of equal spread: one-way F of the distances from the median. Groups of one block are left out.
 * Source: NIST/SEMATECH e-Handbook 1.3.5.10. Checked: tests/domain/findings/compare/spreadTests.spec.ts against NIST's gear data.
 */
export function brownForsytheTest(groups: readonly GroupValues[]): TestOfGroups {
  return testOfDistances(groups, median)
}

/**
 * Levene's test of equal spread: one-way F of the distances from the mean. Groups of one block are left out.
 * Source: NIST/SEMATECH e-Handbook 1.3.5.10. Checked: tests/domain/findings/compare/spreadTests.spec.ts against scipy.
 */
export function leveneTest(groups: readonly GroupValues[]): TestOfGroups {
  return testOfDistances(groups, (values) => withMoments([{ group: '', values }], 1)[0]!.mean)
}

/**
 * Bartlett's test of equal variances, which takes the values to be normal. Groups of one block are left out.
 *
 *   χ² = [ν ln s² − Σ νᵢ ln sᵢ²] / [1 + (Σ 1/νᵢ − 1/ν)/(3(k − 1))],  νᵢ = nᵢ − 1
 *
 * None where a group has no spread.
 * Source: NIST/SEMATECH e-Handbook 1.3.5.7. Checked: tests/domain/findings/compare/spreadTests.spec.ts against NIST's gear data.
 */
export function bartlettTest(values: readonly GroupValues[]): TestOfGroups {
  const groups = withMoments(values, 2)
  const k = groups.length
  if (k < 2 || groups.some(({ squares }) => squares === 0)) return noTest
  const { df, variance } = withinGroups(groups)
  let sum = df * Math.log(variance)
  let reciprocals = -1 / df
  for (const { n, squares } of groups) {
    sum -= (n - 1) * Math.log(squares / (n - 1))
    reciprocals += 1 / (n - 1)
  }
  const statistic = sum / (1 + reciprocals / (3 * (k - 1)))
  return testOrNone({ statistic, df1: k - 1, df2: null, p: chiSquareUpperTail(Math.max(statistic, 0), k - 1) })
}
