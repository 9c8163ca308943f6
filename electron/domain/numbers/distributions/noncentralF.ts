import { regularizedBeta } from './incompleteBeta.ts'
import { logGamma } from './stirling.ts'

/**
 * Probability that a noncentral F variable is above f.
 *
 *   Σ_j Poisson(j; λ/2) · (1 − I_x(ν₁/2 + j, ν₂/2)),  x = ν₁ f / (ν₁ f + ν₂)      summed outwards from the likeliest j
 *
 * Throws RangeError for degrees of freedom not positive and finite or λ negative. f of 0 or less gives 1.
 * Source: Abramowitz and Stegun 26.6.18 (from memory). Checked: tests/domain/numbers/distributions/noncentralF.spec.ts against R pf.
 */
export function noncentralFUpperTail(f: number, df1: number, df2: number, lambda: number): number {
  if (!(df1 > 0 && df2 > 0 && Number.isFinite(df1) && Number.isFinite(df2)))
    throw new RangeError('F requires degrees of freedom above 0')
  if (!(lambda >= 0 && Number.isFinite(lambda)))
    throw new RangeError('Noncentral F requires a noncentrality of 0 or more')
  if (!(f > 0)) return 1
  const sum = df1 * f + df2
  const upper = (j: number) => regularizedBeta(df1 / 2 + j, df2 / 2, (df1 * f) / sum, df2 / sum).upper
  const mean = lambda / 2
  if (mean === 0) return upper(0)
  const likeliest = Math.floor(mean)
  const largest = Math.exp(likeliest * Math.log(mean) - mean - logGamma(likeliest + 1))
  let total = largest * upper(likeliest)
  for (let j = likeliest + 1, weight = (largest * mean) / j; weight > 1e-18; j++, weight *= mean / j)
    total += weight * upper(j)
  for (let j = likeliest - 1, weight = (largest * likeliest) / mean; j >= 0 && weight > 1e-18; weight *= j / mean, j--)
    total += weight * upper(j)
  return Math.min(total, 1)
}
