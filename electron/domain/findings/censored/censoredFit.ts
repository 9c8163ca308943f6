import { fittingUnitMPa, locationScale, type StrengthDistribution, scaledValues } from './locationScale.ts'
import { type CensoredValues, type Estimate, maximumLikelihood, noMaximum } from './maximumLikelihood.ts'
import { profileInterval } from './profileInterval.ts'
import { locationError, quantileInterval } from './quantileInterval.ts'

/** Strengths of one group, MPa, above 0: of blocks whose bond failed, and of those whose wood did. */
export type CensoredStrengths = { readonly failed: readonly number[]; readonly censored: readonly number[] }

/** Why there is no fit: no bond failed, the failures show no spread, or the search found no end. */
export type NoFit = 'no-failure' | 'no-spread' | 'not-found'

export type CensoredFit = {
  readonly logLikelihood: number
  readonly aic: number
  /** null for three blocks or fewer. */
  readonly aicc: number | null
  readonly parameters: Readonly<Record<string, number>>
  readonly standardErrors: Readonly<Record<string, number>>
  readonly meanMPa: number
  readonly meanLowMPa: number | null
  readonly meanHighMPa: number | null
  readonly medianMPa: number
  readonly b10MPa: number
  readonly b10LowMPa: number | null
  readonly b10HighMPa: number | null
}

/**
 * One distribution fitted to the strengths of the bonds of a group, where a block whose wood failed says only that its bond held
 * more than that. The log likelihood is on the strength scale. A word where the data have no estimate.
 *
 *   AIC = −2 ln L + 4,  AICc = AIC + 12/(n − 3),  n all blocks
 *
 * Source: Meeker and Escobar (1998), chapters 7 and 8 (from memory); Burnham and Anderson (2002) for AICc.
 * Checked: tests/domain/findings/censored/censoredFit.spec.ts against NIST/SEMATECH e-Handbook 8.4.1.3 and R survreg.
 */
export function censoredFit(
  strengths: CensoredStrengths,
  distribution: StrengthDistribution,
  confidence: number,
): CensoredFit | NoFit {
  const fit = estimated(strengths, distribution)
  if (typeof fit === 'string') return fit
  const { model, unit, values, estimate, mean } = fit
  const { mu, logSigma } = estimate
  const sigma = Math.exp(logSigma)
  const jacobian = model.logarithmic ? values.failed.reduce((sum, y) => sum + y + Math.log(unit), 0) : 0
  const logLikelihood = estimate.logLikelihood - jacobian
  const n = values.failed.length + values.censored.length
  const aic = -2 * logLikelihood + 4
  const strengthAt = (z: number) => (model.logarithmic ? Math.exp(mu + z * sigma) : mu + z * sigma)
  const roughSe = (model.logarithmic ? mean : 1) * locationError(estimate, 0)
  const ofMean = { value: mean, se: roughSe, location: model.locationOfMean }
  const around = profileInterval(values, model, estimate, ofMean, confidence)
  const b10 = quantileInterval(values, model, estimate, 0.1, confidence)
  const inMPa = (end: number | null) => (end === null ? null : unit * end)
  return {
    logLikelihood,
    aic,
    aicc: n <= 3 ? null : aic + 12 / (n - 3),
    ...named(distribution, unit, estimate),
    meanMPa: unit * mean,
    meanLowMPa: inMPa(around.low),
    meanHighMPa: inMPa(around.high),
    medianMPa: unit * strengthAt(model.standardQuantile(0.5)),
    b10MPa: unit * b10.strengthMPa,
    b10LowMPa: inMPa(b10.low),
    b10HighMPa: inMPa(b10.high),
  }
}

/** The mean of that fit alone, MPa, without its intervals, which take most of the time. Checked: tests/domain/findings/censored/censoredFit.spec.ts. */
export function censoredMean(strengths: CensoredStrengths, distribution: StrengthDistribution): number | NoFit {
  const fit = estimated(strengths, distribution)
  return typeof fit === 'string' ? fit : fit.unit * fit.mean
}

/** The maximum of the likelihood, in the unit in which it was searched, and the values in that unit; a word where there is none. */
export function estimated(strengths: CensoredStrengths, distribution: StrengthDistribution) {
  const model = locationScale[distribution]
  const unit = fittingUnitMPa(model, strengths.failed)
  const scaled = (all: readonly number[]) => scaledValues(model, unit, all)
  const values: CensoredValues = { failed: scaled(strengths.failed), censored: scaled(strengths.censored) }
  const none = noMaximum(values)
  if (none !== null) return none
  const estimate = maximumLikelihood(values, model)
  if (estimate === null) return 'not-found'
  return { model, unit, values, estimate, mean: model.meanMPa(estimate.mu, Math.exp(estimate.logSigma)) }
}

/** Location and scale under the names of the trade, with standard errors by the delta method. */
function named(
  distribution: StrengthDistribution,
  unit: number,
  { mu, logSigma, covariance }: Estimate,
): Pick<CensoredFit, 'parameters' | 'standardErrors'> {
  const sigma = Math.exp(logSigma)
  const ofMu = Math.sqrt(covariance.mu)
  const ofLog = Math.sqrt(covariance.logSigma)
  if (distribution === 'weibull') {
    const scale = unit * Math.exp(mu)
    return { parameters: { scale, shape: 1 / sigma }, standardErrors: { scale: scale * ofMu, shape: ofLog / sigma } }
  }
  const [location, spread] = distribution === 'normal' ? ['mean', 'sd'] : ['mu', 'sigma']
  return {
    parameters: { [location!]: mu + Math.log(unit), [spread!]: sigma },
    standardErrors: { [location!]: ofMu, [spread!]: sigma * ofLog },
  }
}
