import { normalProbability, normalQuantile } from '../../numbers/distributions/normal.ts'
import { logGamma } from '../../numbers/distributions/stirling.ts'

export type StrengthDistribution = 'weibull' | 'lognormal' | 'normal'

/** Value of a log density or log survival at z, with its first two derivatives. */
export type Curvature = readonly [value: number, first: number, second: number]

/**
 * A distribution of strength as location and scale: z = (y − μ)/σ, y the strength in MPa or its logarithm.
 * The mean is one-to-one in μ for a given σ, which profiles use.
 */
export type LocationScale = {
  readonly logarithmic: boolean
  density(z: number): Curvature
  survival(z: number): Curvature
  /** z below which a share p lies. */
  standardQuantile(p: number): number
  /** μ at which the mean strength has that value, MPa, given σ. */
  locationOfMean(meanMPa: number, sigma: number): number
  meanMPa(mu: number, sigma: number): number
}

const halfLogTwoPi = 0.5 * Math.log(2 * Math.PI)

/** φ(z)/(1 − Φ(z)), from the continued fraction where the tail has no digits left. */
function hazard(z: number): number {
  if (z < 12) return Math.exp(-0.5 * z * z - halfLogTwoPi) / normalProbability(-z)
  let fraction = z
  for (let n = 40; n > 0; n--) fraction = z + n / fraction
  return fraction
}

const gaussian = {
  density: (z: number): Curvature => [-0.5 * z * z - halfLogTwoPi, -z, -1],
  survival(z: number): Curvature {
    const h = hazard(z)
    const log = z < 12 ? Math.log(normalProbability(-z)) : -0.5 * z * z - halfLogTwoPi - Math.log(h)
    return [log, -h, -h * (h - z)]
  },
  standardQuantile: normalQuantile,
}

/** Log density z − eᶻ of the smallest extreme, and log survival −eᶻ. */
const smallestExtreme = {
  density(z: number): Curvature {
    const e = Math.exp(z)
    return [z - e, 1 - e, -e]
  },
  survival(z: number): Curvature {
    const e = Math.exp(z)
    return [-e, -e, -e]
  },
  standardQuantile: (p: number) => Math.log(-Math.log1p(-p)),
}

/**
 * The three distributions of strength.
 *
 *   normal: y = x; lognormal: y = ln x, z normal, mean exp(μ + σ²/2); Weibull: y = ln x, z smallest extreme, scale e^μ, shape 1/σ,
 *   mean e^μ Γ(1 + σ)
 *
 * Source: Meeker and Escobar, Statistical Methods for Reliability Data, 1998, chapters 4 and 8 (from memory).
 * Checked: tests/domain/findings/censored/locationScale.spec.ts and, with data, against R survreg in censoredFit.spec.ts.
 */
export const locationScale: Record<StrengthDistribution, LocationScale> = {
  normal: { logarithmic: false, ...gaussian, meanMPa: (mu) => mu, locationOfMean: (mean) => mean },
  lognormal: {
    logarithmic: true,
    ...gaussian,
    meanMPa: (mu, sigma) => Math.exp(mu + (sigma * sigma) / 2),
    locationOfMean: (mean, sigma) => Math.log(mean) - (sigma * sigma) / 2,
  },
  weibull: {
    logarithmic: true,
    ...smallestExtreme,
    meanMPa: (mu, sigma) => Math.exp(mu + logGamma(1 + sigma)),
    locationOfMean: (mean, sigma) => Math.log(mean) - logGamma(1 + sigma),
  },
}

/**
 * Strengths on the scale of a distribution: MPa, or logarithms in units of one of the strengths, so that those that lie close
 * together keep their digits. Checked: tests/domain/findings/censored/censoredFit.spec.ts.
 */
export function scaledValues(model: LocationScale, unitMPa: number, strengthsMPa: readonly number[]): number[] {
  return model.logarithmic ? strengthsMPa.map((x) => Math.log1p((x - unitMPa) / unitMPa)) : [...strengthsMPa]
}

/** The unit, MPa, in which a distribution is fitted to bonds that failed at these strengths: one of them, or 1 where nothing is a logarithm. */
export function fittingUnitMPa(model: LocationScale, failedMPa: readonly number[]): number {
  return model.logarithmic ? (failedMPa[0] ?? 1) : 1
}
