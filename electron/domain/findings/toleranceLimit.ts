import { regularizedBeta } from '../numbers/distributions/incompleteBeta.ts'
import { noncentralTQuantile } from '../numbers/distributions/noncentralT.ts'
import { normalQuantile } from '../numbers/distributions/normal.ts'

/** With so much confidence, at least so large a share of all blocks is stronger. */
export type ToleranceTerms = { readonly confidence: number; readonly content: number }

/** Factors and places found already: the many groups of a programme have few different numbers of blocks. */
const factors = new Map<string, number>()
const orders = new Map<string, number>()

function remembered(found: Map<string, number>, n: number, terms: ToleranceTerms, find: () => number): number {
  const key = `${n} ${terms.confidence} ${terms.content}`
  const known = found.get(key) ?? find()
  found.set(key, known)
  return known
}

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
  const { confidence, content } = terms
  return remembered(
    factors,
    n,
    terms,
    () => noncentralTQuantile(confidence, n - 1, normalQuantile(content) * Math.sqrt(n)) / Math.sqrt(n),
  )
}

/**
 * Which of n values, counted from the weakest as 1, is a lower tolerance limit without any assumption; 0: n is too small.
 *
 *   the largest r with P(at least r of n below the limit) = I_{1−content}(r, n − r + 1) ≥ confidence
 *
 * Source: ASTM D2915 (from memory); Conover, Practical Nonparametric Statistics, 1999, 3.3.
 * Checked: tests/domain/findings/toleranceLimit.spec.ts against the least n of D2915.
 */
export function toleranceOrder(n: number, terms: ToleranceTerms): number {
  const { confidence, content } = terms
  return remembered(orders, n, terms, () => {
    let order = 0
    while (order < n && regularizedBeta(order + 1, n - order, 1 - content, content).lower >= confidence) order += 1
    return order
  })
}
