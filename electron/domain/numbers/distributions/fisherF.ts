import { regularizedBeta, type Tails } from './incompleteBeta.ts'
import { positiveQuantile } from './quantileSearch.ts'

function tailsOf(f: number, df1: number, df2: number): Tails {
  if (!(df1 > 0 && df2 > 0 && Number.isFinite(df1) && Number.isFinite(df2)))
    throw new RangeError('F requires degrees of freedom above 0')
  if (!(f > 0)) return { lower: 0, upper: 1 }
  if (f === Number.POSITIVE_INFINITY) return { lower: 1, upper: 0 }
  const sum = df1 * f + df2
  if (!Number.isFinite(sum)) return { lower: 1, upper: 0 }
  return regularizedBeta(df1 / 2, df2 / 2, (df1 * f) / sum, df2 / sum)
}

/**
 * Probability that an F variable is at most f.
 *
 *   P = I_x(ν₁/2, ν₂/2),  x = ν₁ f / (ν₁ f + ν₂)
 *
 * Throws RangeError for degrees of freedom not positive and finite. f below 0 gives 0.
 * Source: NIST/SEMATECH e-Handbook 1.3.6.6.5. Checked: tests/domain/numbers/distributions/fisherF.spec.ts against R pf.
 */
export function fProbability(f: number, df1: number, df2: number): number {
  return tailsOf(f, df1, df2).lower
}

/**
 * Probability that an F variable is above f, with all its digits where it is small.
 *
 *   1 − I_x(ν₁/2, ν₂/2),  x = ν₁ f / (ν₁ f + ν₂)
 *
 * Throws RangeError for degrees of freedom not positive and finite. f below 0 gives 1.
 * Source: NIST/SEMATECH e-Handbook 1.3.6.6.5. Checked: tests/domain/numbers/distributions/fisherF.spec.ts against R pf.
 */
export function fUpperTail(f: number, df1: number, df2: number): number {
  return tailsOf(f, df1, df2).upper
}

/**
 * Value below which an F variable lies with probability p.
 *
 * Throws RangeError for p outside 0..1 or degrees of freedom not positive and finite.
 * Source: inverse of fProbability. Checked: tests/domain/numbers/distributions/fisherF.spec.ts against R qf.
 */
export function fQuantile(p: number, df1: number, df2: number): number {
  return positiveQuantile((f) => tailsOf(f, df1, df2), p)
}
