import { bracketedRoot } from '../bracketedRoot.ts'
import { noncentralTProbability, noncentralTUpperTail } from './noncentralT.ts'
import { tCritical } from './studentT.ts'

/**
 * Chance that a two-sided t test finds what lies δ of its own standard errors from nothing; both tails count.
 *
 *   P(|T| > t),  T noncentral t with ν degrees of freedom and noncentrality δ,  t the two-sided quantile
 *
 * Throws RangeError for ν not positive or δ not finite.
 * Source: definition of the test's power; Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, chapter 2, from
 * memory. Checked: tests/domain/numbers/distributions/shiftToFind.spec.ts against R pt and power.t.test.
 */
export function powerOfT(delta: number, df: number, confidence: number): number {
  const t = tCritical(confidence, df)
  return noncentralTUpperTail(t, df, delta) + noncentralTProbability(-t, df, delta)
}

/**
 * How many of its own standard errors from nothing a two-sided t test finds with that power; 0 for a power that is no more than
 * the chance of a false alarm. Throws RangeError as powerOfT.
 *
 * Source: inverse of powerOfT. Checked: tests/domain/numbers/distributions/shiftToFind.spec.ts against R power.t.test.
 */
export function shiftToFind(df: number, confidence: number, power: number): number {
  if (power <= 1 - confidence) return 0
  const short = (delta: number) => powerOfT(delta, df, confidence) - power
  let most = 4
  while (short(most) < 0) most *= 2
  return bracketedRoot(short, 0, most, 1e-12)
}
