import { regularizedGamma } from './incompleteGamma.ts'
import { positiveQuantile } from './quantileSearch.ts'

/**
 * Probability that a standard normal variable is at most z.
 *
 *   Φ(z) = ½ Q(½, z²/2) for z < 0,  1 − ½ Q(½, z²/2) for z ≥ 0      Q upper regularized incomplete gamma
 *
 * Throws RangeError for z that is not a number.
 * Source: NIST/SEMATECH e-Handbook 1.3.6.6.1. Checked: tests/domain/numbers/distributions/normal.spec.ts against R pnorm.
 */
export function normalProbability(z: number): number {
  const tail = 0.5 * regularizedGamma(0.5, (z * z) / 2).upper
  return z < 0 ? tail : 1 - tail
}

/**
 * Value below which a standard normal variable lies with probability p.
 *
 * Throws RangeError for p outside 0..1.
 * Source: inverse of normalProbability. Checked: tests/domain/numbers/distributions/normal.spec.ts against R qnorm.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError('A quantile requires a probability from 0 to 1')
  if (p === 0.5) return 0
  const tail = 2 * Math.min(p, 1 - p)
  const size = positiveQuantile((z) => regularizedGamma(0.5, (z * z) / 2), 1 - tail, tail)
  return p < 0.5 ? -size : size
}
