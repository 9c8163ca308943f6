import { regularizedBeta } from '../numbers/distributions/incompleteBeta.ts'
import { noncentralTQuantile } from '../numbers/distributions/noncentralT.ts'
import { normalQuantile } from '../numbers/distributions/normal.ts'
import { onceForEach } from '../numbers/onceForEach.ts'

/** With so much confidence, at least so large a share of all blocks is stronger. */
export type ToleranceTerms = { readonly confidence: number; readonly content: number }

/**
 * Factor k of the lower one-sided tolerance limit mean − k SD of normal values, n at least 2.
 *
 *   k = t′(confidence; n − 1, z(content) √n)/√n      noncentral t
 *
 * Throws RangeError for n below 2 or probabilities outside 0..1.
 * Source: ASTM D2915 (tables, from memory); NIST/SEMATECH e-Handbook 7.2.6.3.
 * Checked: tests/domain/findings/toleranceLimit.spec.ts against the printed factors.
 */
export function toleranceFactor(n: number, terms: ToleranceTerms): number {
  if (!(n >= 2)) throw new RangeError('toleranceFactor requires two blocks')
  return factorOf(n, terms.confidence, terms.content)
}

const factorOf = onceForEach(
  (n: number, confidence: number, content: number) =>
    noncentralTQuantile(confidence, n - 1, normalQuantile(content) * Math.sqrt(n)) / Math.sqrt(n),
)

/**
 * Which of n values, counted from the weakest as 1, is a lower tolerance limit without any assumption; 0: n is too small.
 *
 *   the largest r with P(at least r of n below the limit) = I_{1−content}(r, n − r + 1) ≥ confidence
 *
 * Source: ASTM D2915 (from memory); Conover, Practical Nonparametric Statistics, 1999, 3.3.
 * Checked: tests/domain/findings/toleranceLimit.spec.ts against the least n of D2915.
 */
export function toleranceOrder(n: number, terms: ToleranceTerms): number {
  return orderOf(n, terms.confidence, terms.content)
}

const orderOf = onceForEach((n: number, confidence: number, content: number) => {
  let order = 0
  while (order < n && regularizedBeta(order + 1, n - order, 1 - content, content).lower >= confidence) order += 1
  return order
})
