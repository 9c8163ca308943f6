import { shiftToFind } from '../../numbers/distributions/shiftToFind.ts'
import { momentsOf } from '../../numbers/moments.ts'

/**
 * Smallest change of the mean from the first to the last age, in percent of the first mean, that a comparison of the two finds
 * with that power: the spread pooled over all ages. Null without spread, with fewer than two blocks at an end, or a first mean of 0.
 *
 *   change = shiftToFind · s √(1/n₁ + 1/n₂)      ν of the pooled spread s
 *
 * Source: as domain/numbers/distributions/shiftToFind.ts. Checked: tests/domain/findings/ageing/changeToFind.spec.ts against R power.t.test.
 */
export function changeToFind(ages: readonly (readonly number[])[], confidence: number, power: number): number | null {
  const moments = ages.map(momentsOf)
  const first = moments[0]!
  const last = moments.at(-1)!
  const df = moments.reduce((sum, { n }) => sum + n - 1, 0)
  const squares = moments.reduce((sum, one) => sum + one.squares, 0)
  if (first.n < 2 || last.n < 2 || !(squares > 0) || first.mean === 0 || power <= 1 - confidence) return null
  const delta = shiftToFind(df, confidence, power)
  return Math.abs((100 * delta * Math.sqrt((squares / df) * (1 / first.n + 1 / last.n))) / first.mean)
}
