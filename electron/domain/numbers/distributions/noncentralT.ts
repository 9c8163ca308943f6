import { bracketedRoot } from '../bracketedRoot.ts'
import { normalProbability } from './normal.ts'
import { meanOverSpread } from './pooledSpread.ts'
import { tQuantile } from './studentT.ts'

/** Probability that the normal variable beyond the noncentrality stays below, by `side` 1, or above, by −1, what the spread allows. */
function tail(t: number, df: number, delta: number, side: 1 | -1): number {
  if (Number.isNaN(t) || !Number.isFinite(delta))
    throw new RangeError('Noncentral t requires a number and a finite noncentrality')
  return meanOverSpread(df, delta, (s) => normalProbability(side * (t * s - delta)))
}

/**
 * Probability that a noncentral t variable is at most t: (Z + δ) / S with Z standard normal and S a standard deviation with ν
 * degrees of freedom.
 *
 *   P = E Φ(t S − δ)
 *
 * Throws RangeError for ν not positive or δ not finite.
 * Source: definition. Checked: tests/domain/numbers/distributions/noncentralT.spec.ts against mpmath quadrature.
 */
export function noncentralTProbability(t: number, df: number, delta: number): number {
  return tail(t, df, delta, 1)
}

/** Probability that a noncentral t variable is above t, with its digits where it is small; as noncentralTProbability. */
export function noncentralTUpperTail(t: number, df: number, delta: number): number {
  return tail(t, df, delta, -1)
}

/**
 * Value below which a noncentral t variable lies with probability p, 0 < p < 1.
 *
 * Throws RangeError for p outside, ν not positive or δ not finite.
 * Source: inverse of noncentralTProbability. Checked: tests/domain/numbers/distributions/noncentralT.spec.ts.
 */
export function noncentralTQuantile(p: number, df: number, delta: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError('A quantile of noncentral t requires a probability between 0 and 1')
  const excess = (t: number) => (p < 0.5 ? tail(t, df, delta, 1) - p : 1 - p - tail(t, df, delta, -1))
  const guess = delta + tQuantile(p, df)
  let reach = 1 + Math.abs(delta) / 4
  let low = guess - reach
  let high = guess + reach
  for (; excess(low) > 0; reach *= 2) low -= reach
  for (; excess(high) < 0; reach *= 2) high += reach
  return bracketedRoot(excess, low, high, 1e-14 * Math.max(1, Math.abs(guess)))
}
