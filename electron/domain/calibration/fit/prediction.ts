import { dot } from '../../numbers/matrices/dot.ts'
import type { CentredFit } from './polynomialFit.ts'

type Basis = Pick<CentredFit, 'centre' | 'scale' | 'powers'>

const basisAt = (fit: Basis, x: number) => fit.powers.map((power) => ((x - fit.centre) / fit.scale) ** power)

/**
 * Value of a fit at x, in the unit of y, computed about its centre so that no digits are lost.
 *
 *   ŷ = Σ c_k u^k,  u = (x − centre) / scale
 *
 * Source: definition. Checked: tests/domain/calibration/fit/prediction.spec.ts.
 */
export function fittedValue(fit: Pick<CentredFit, 'centre' | 'scale' | 'powers' | 'coefficients'>, x: number): number {
  return dot(basisAt(fit, x), fit.coefficients)
}

/**
 * Standard error of the fitted curve at x, in the unit of y.
 *
 *   u(ŷ) = sqrt( vᵀ Cov(c) v ),  v = (u^k)
 *
 * Throws RangeError for a fit without degrees of freedom.
 * Source: JCGM 100 H.3.4; NIST/SEMATECH e-Handbook 4.5.1.2. Checked: tests/domain/calibration/fit/prediction.spec.ts against R predict.lm.
 */
export function standardErrorOfFit(fit: Basis & Pick<CentredFit, 'covariance'>, x: number): number {
  const { covariance } = fit
  if (covariance === null) throw new RangeError('standardErrorOfFit requires degrees of freedom above 0')
  const basis = basisAt(fit, x)
  let variance = 0
  basis.forEach((a, i) => {
    basis.forEach((b, j) => {
      variance += a * b * covariance[i]![j]!
    })
  })
  return Math.sqrt(Math.max(variance, 0))
}
