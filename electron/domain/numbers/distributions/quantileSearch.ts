import { bracketedRoot } from '../bracketedRoot.ts'
import type { Tails } from './incompleteBeta.ts'

/**
 * Quantile of a distribution on the positive numbers from its two tails, in the unit of the variable.
 *
 *   x with tails(x).lower = p
 *
 * Searches on the smaller tail, so that p near 0 and p near 1 lose no digits; brackets by doubling from 1.
 * Throws RangeError for p outside 0..1. p = 0 gives 0, p = 1 gives Infinity.
 * Source: definition of a quantile. Checked: through tests/domain/distributions/{chiSquare,fisherF,studentT}.spec.ts.
 */
export function positiveQuantile(tails: (x: number) => Tails, p: number, upperTail = 1 - p): number {
  if (!(p >= 0 && p <= 1)) throw new RangeError('A quantile requires a probability from 0 to 1')
  if (p === 0) return 0
  if (upperTail === 0) return Number.POSITIVE_INFINITY
  const excess = (x: number) => (p < upperTail ? tails(x).lower / p - 1 : 1 - tails(x).upper / upperTail)
  let low = 1
  let high = 1
  while (excess(high) < 0) {
    low = high
    high *= 2
  }
  while (excess(low) > 0) {
    high = low
    low /= 2
  }
  return low === high ? low : bracketedRoot(excess, low, high)
}
