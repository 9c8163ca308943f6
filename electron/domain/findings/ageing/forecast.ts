import { tCritical, tProbability } from '../../numbers/distributions/studentT.ts'
import type { AgeingFit, WeightedFit } from './ageingFit.ts'
import { gradientRow, meanAt } from './ageingModels.ts'

/** Mean strength of the group at an age that nobody has seen yet; MPa, percent of the start, and a chance. */
export type Forecast = {
  readonly ageMonths: number
  readonly meanMPa: number
  readonly lowMPa: number
  readonly highMPa: number
  readonly retentionPercent: number | null
  readonly belowShareProbability: number | null
  /** The same by the model that makes it least likely, and by the one that makes it most likely. */
  readonly belowShareRange: readonly [number, number] | null
}

/** A model whose AICc lies farther than this above the best is ruled out (Burnham and Anderson 2002, 2.6, from memory: 4 to 7). */
const plausibleWithin = 7

/**
 * Forecast of the mean from all models that the data leave possible: the mean is weighted; the band holds the interval of every
 * model that is not ruled out, so that it is never narrower than the data allow; the chance of a mean below a share of the mean at
 * the first age is the weighted chance, with the least and the largest of those models.
 *
 *   x̂ = Σ wᵢ xᵢ(t)      band: from min(xᵢ − tᵢ sᵢ) to max(xᵢ + tᵢ sᵢ)      sᵢ² = g(t)ᵀ C g(t)
 *
 * Throws RangeError without a fit. Checked: tests/domain/findings/ageing/forecast.spec.ts; coverage by `npm run soak -- coverage`.
 */
export function forecastAt(
  fits: readonly WeightedFit[],
  ageMonths: number,
  terms: { confidence: number; firstAgeMonths: number; share: number },
): Forecast {
  if (fits.length === 0) throw new RangeError('forecastAt requires a fitted model')
  const heaviest = Math.max(...fits.map(({ weight }) => weight))
  const possible = fits.filter(({ weight }) => weight >= heaviest * Math.exp(-plausibleWithin / 2))
  const all = possible.reduce((sum, { weight }) => sum + weight, 0)
  let meanMPa = 0
  let startMPa = 0
  let below = 0
  let [least, most] = [1, 0]
  let lowMPa = Number.POSITIVE_INFINITY
  let highMPa = Number.NEGATIVE_INFINITY
  for (const { fit, weight } of possible) {
    const value = meanAt(fit.model, ageMonths, fit.parameters)
    const start = meanAt(fit.model, terms.firstAgeMonths, fit.parameters)
    const now = gradientRow(fit.model, ageMonths, fit.parameters)
    const se = seOf(fit, now)
    const half = tCritical(terms.confidence, fit.degreesOfFreedom) * se
    meanMPa += (weight / all) * value
    startMPa += (weight / all) * start
    lowMPa = Math.min(lowMPa, value - half)
    highMPa = Math.max(highMPa, value + half)
    const then = gradientRow(fit.model, terms.firstAgeMonths, fit.parameters)
    const seOfDifference = seOf(
      fit,
      now.map((slope, i) => slope - terms.share * then[i]!),
    )
    const short = (terms.share * start - value) / seOfDifference
    const chance = tProbability(short, fit.degreesOfFreedom)
    below += (weight / all) * chance
    least = Math.min(least, chance)
    most = Math.max(most, chance)
  }
  const known = startMPa > 0
  return {
    ageMonths,
    meanMPa,
    lowMPa,
    highMPa,
    retentionPercent: known ? (100 * meanMPa) / startMPa : null,
    belowShareProbability: known ? below : null,
    belowShareRange: known ? [least, most] : null,
  }
}

/** Standard error of a linear combination of the parameters. */
function seOf({ covariance }: AgeingFit, factors: readonly number[]): number {
  let sum = 0
  factors.forEach((a, i) => {
    factors.forEach((b, j) => {
      sum += a * b * covariance[i]![j]!
    })
  })
  return Math.sqrt(Math.max(sum, 0))
}
