import { bracketedRoot } from '../../numbers/bracketedRoot.ts'
import { noncentralTProbability, noncentralTUpperTail } from '../../numbers/distributions/noncentralT.ts'
import { tQuantile } from '../../numbers/distributions/studentT.ts'
import { momentsOf } from '../../numbers/moments.ts'

/**
 * Smallest change of the mean from the first to the last age, in percent of the first mean, that a comparison of the two finds
 * with that power: the spread pooled over all ages. Null without spread, with fewer than two blocks at an end, or a first mean of 0.
 *
 *   P(|T| > t) = power,  T noncentral t, ν of the pooled spread, δ = change/(s √(1/n₁ + 1/n₂))
 *
 * Source: as domain/programme/sampleSize.ts. Checked: tests/domain/findings/ageing/changeToFind.spec.ts against R power.t.test.
 */
export function changeToFind(ages: readonly (readonly number[])[], confidence: number, power: number): number | null {
  const moments = ages.map(momentsOf)
  const first = moments[0]!
  const last = moments.at(-1)!
  const df = moments.reduce((sum, { n }) => sum + n - 1, 0)
  const squares = moments.reduce((sum, one) => sum + one.squares, 0)
  if (first.n < 2 || last.n < 2 || !(squares > 0) || first.mean === 0 || power <= 1 - confidence) return null
  const t = -tQuantile((1 - confidence) / 2, df)
  const short = (delta: number) => noncentralTUpperTail(t, df, delta) + noncentralTProbability(-t, df, delta) - power
  let most = 4
  while (short(most) < 0) most *= 2
  const delta = bracketedRoot(short, 0, most, 1e-12)
  return Math.abs((100 * delta * Math.sqrt((squares / df) * (1 / first.n + 1 / last.n))) / first.mean)
}
