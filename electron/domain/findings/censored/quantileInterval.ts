import type { LocationScale } from './locationScale.ts'
import type { CensoredValues, Estimate } from './maximumLikelihood.ts'
import { profileInterval } from './profileInterval.ts'

/** A strength below which a share of bonds fails, MPa, with its interval; null on a side that the data leave open. */
export type QuantileInterval = {
  readonly strengthMPa: number
  readonly low: number | null
  readonly high: number | null
}

/** Standard error of μ + zσ by the delta method, on the scale of the distribution. Checked: tests/domain/findings/censored/quantileInterval.spec.ts. */
export function locationError({ logSigma, covariance }: Estimate, z: number): number {
  const sigma = Math.exp(logSigma)
  const variance = covariance.mu + 2 * z * sigma * covariance.both + (z * sigma) ** 2 * covariance.logSigma
  return Math.sqrt(Math.max(variance, 0))
}

/**
 * The strength below which a share of the bonds fails under a fitted distribution, with its profile likelihood interval.
 *
 *   x = μ + zσ (normal) or exp(μ + zσ),  z the standard quantile of the share
 *
 * Source: Meeker and Escobar (1998), 8.3 and 8.4 (from memory). Checked: tests/domain/findings/censored/quantileInterval.spec.ts,
 * through censoredFit.spec.ts against R survreg.
 */
export function quantileInterval(
  values: CensoredValues,
  model: LocationScale,
  estimate: Estimate,
  share: number,
  confidence: number,
): QuantileInterval {
  const z = model.standardQuantile(share)
  const at = estimate.mu + z * Math.exp(estimate.logSigma)
  const strengthMPa = model.logarithmic ? Math.exp(at) : at
  const factor = model.logarithmic ? strengthMPa : 1
  const interval = profileInterval(
    values,
    model,
    estimate,
    {
      value: strengthMPa,
      se: factor * locationError(estimate, z),
      location: (value, sigma) => (model.logarithmic ? Math.log(value) : value) - z * sigma,
    },
    confidence,
  )
  return { strengthMPa, ...interval }
}
