import { normalQuantile } from '../../numbers/distributions/normal.ts'
import { type CensoredStrengths, estimated, type NoFit } from './censoredFit.ts'
import { kaplanMeier } from './kaplanMeier.ts'
import { locationScale } from './locationScale.ts'
import type { CensoredValues, Estimate } from './maximumLikelihood.ts'
import { locationError, type QuantileInterval, quantileInterval } from './quantileInterval.ts'

/** The bonds of one group on Weibull paper. Shares are of bonds that fail below a strength, 0 to 1. */
export type WeibullPlot = {
  /** Where each strength at which bonds failed stands, rising. */
  readonly failed: readonly { readonly strengthMPa: number; readonly share: number }[]
  /** Strengths that bonds held because their wood failed first, MPa, rising. */
  readonly held: readonly number[]
  /** The fitted line with its band, share by share; a word where there is no fit. */
  readonly line: readonly (QuantileInterval & { readonly share: number })[] | NoFit
  readonly parameters: { readonly scaleMPa: number; readonly shape: number } | null
}

/** Shares at which a line on Weibull paper and its band are drawn. */
export const paperShares: readonly number[] = [
  0.001, 0.003, 0.01, 0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 0.85, 0.95, 0.99, 0.999,
]

/** From so many failures on, an interval from the standard error holds what it says, and the profile is only slower. */
const manyFailures = 150

/**
 * Where bonds stand on Weibull paper, with the fit by maximum likelihood and its interval at each share of `shares`.
 *
 *   p(x) = 1 − [S(x−) + S(x)]/2      S Kaplan-Meier: the middle of its step, (i − 0.5)/n where no wood failed
 *
 * Source: Meeker and Escobar, Statistical Methods for Reliability Data, 1998, 6.4 (from memory).
 * Checked: tests/domain/findings/censored/weibullPlot.spec.ts against NIST/SEMATECH e-Handbook 8.2.1.5 and 8.4.1.3.
 */
export function weibullPlot(strengths: CensoredStrengths, shares: readonly number[], confidence: number): WeibullPlot {
  const { strengthMPa, survival } = kaplanMeier(strengths)
  const failed = strengthMPa.map((strength, i) => ({
    strengthMPa: strength,
    share: 1 - ((survival[i - 1] ?? 1) + survival[i]!) / 2,
  }))
  const held = strengths.censored.toSorted((one, other) => one - other)
  const fit = estimated(strengths, 'weibull')
  if (typeof fit === 'string') return { failed, held, line: fit, parameters: null }
  const { unit, values, estimate } = fit
  const inMPa = ({ strengthMPa, low, high }: QuantileInterval): QuantileInterval => ({
    strengthMPa: unit * strengthMPa,
    low: low === null ? null : unit * low,
    high: high === null ? null : unit * high,
  })
  return {
    failed,
    held,
    line: shares.map((share) => ({ share, ...inMPa(intervalAt(values, estimate, share, confidence)) })),
    parameters: { scaleMPa: unit * Math.exp(estimate.mu), shape: 1 / Math.exp(estimate.logSigma) },
  }
}

function intervalAt(values: CensoredValues, estimate: Estimate, share: number, confidence: number): QuantileInterval {
  const model = locationScale.weibull
  if (values.failed.length < manyFailures) return quantileInterval(values, model, estimate, share, confidence)
  const z = model.standardQuantile(share)
  const at = estimate.mu + z * Math.exp(estimate.logSigma)
  const half = -normalQuantile((1 - confidence) / 2) * locationError(estimate, z)
  return { strengthMPa: Math.exp(at), low: Math.exp(at - half), high: Math.exp(at + half) }
}
