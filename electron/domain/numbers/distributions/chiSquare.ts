import { regularizedGamma } from './incompleteGamma.ts'
import { positiveQuantile } from './quantileSearch.ts'

function requireDegrees(df: number): void {
  if (!(df > 0 && Number.isFinite(df))) throw new RangeError('chi-square requires degrees of freedom above 0')
}

/**
 * Probability that a chi-square variable is at most x.
 *
 *   P = P(ν/2, x/2)      ν degrees of freedom, P( , ) regularized incomplete gamma
 *
 * Throws RangeError for ν not positive and finite. x below 0 gives 0.
 * Source: NIST/SEMATECH e-Handbook 1.3.6.6.6. Checked: tests/domain/numbers/distributions/chiSquare.spec.ts against R pchisq.
 */
export function chiSquareProbability(x: number, df: number): number {
  requireDegrees(df)
  return regularizedGamma(df / 2, Math.max(x, 0) / 2).lower
}

/**
 * Probability that a chi-square variable is above x, with all its digits where it is small.
 *
 *   1 − P(ν/2, x/2)
 *
 * Throws RangeError for ν not positive and finite. x below 0 gives 1.
 * Source: NIST/SEMATECH e-Handbook 1.3.6.6.6. Checked: tests/domain/numbers/distributions/chiSquare.spec.ts against R pchisq.
 */
export function chiSquareUpperTail(x: number, df: number): number {
  requireDegrees(df)
  return regularizedGamma(df / 2, Math.max(x, 0) / 2).upper
}

/**
 * Value below which a chi-square variable lies with probability p.
 *
 * Throws RangeError for p outside 0..1 or ν not positive and finite.
 * Source: inverse of chiSquareProbability. Checked: tests/domain/numbers/distributions/chiSquare.spec.ts against R qchisq.
 */
export function chiSquareQuantile(p: number, df: number): number {
  requireDegrees(df)
  return 2 * positiveQuantile((x) => regularizedGamma(df / 2, x), p)
}
