import { bracketedRoot } from '../../numbers/bracketedRoot.ts'
import { tCritical } from '../../numbers/distributions/studentT.ts'
import { minimumBetween } from '../../numbers/goldenMinimum.ts'
import type { LocationScale } from './locationScale.ts'
import { type CensoredValues, type Estimate, logLikelihoodAt } from './maximumLikelihood.ts'

/** A number of the distribution: its value at the estimate, its rough SE, and the location it demands for a given scale. */
export type ProfiledNumber = {
  readonly value: number
  readonly se: number
  location(value: number, sigma: number): number
}

/** An end beyond so many rough standard errors is none: the data do not bound the number on that side. */
const farthestSe = 60

/**
 * Twice the fall of the log likelihood that bounds an interval from r failures: as large as makes the interval of a normal mean
 * that of Student's t.
 *
 *   r ln(1 + t²/(r − 1)),  t the two-sided quantile with r − 1 degrees of freedom      χ²₁ for large r
 *
 * Source: likelihood ratio of the t test, Cox and Hinkley, Theoretical Statistics, 1974, 4.4 (from memory).
 * Checked: tests/domain/findings/censored/profileInterval.spec.ts, and coverage by `npm run soak -- coverage`.
 */
export function deviationAllowed(failures: number, confidence: number): number {
  const t = tCritical(confidence, failures - 1)
  return failures * Math.log1p((t * t) / (failures - 1))
}

/**
 * Interval of a number of a fitted distribution from its profile likelihood: all values for which the likelihood, maximised over
 * the scale, falls by no more than allowed. Null on a side that the data leave open, and on both for a single failure.
 * Source: Meeker and Escobar (1998), 8.3 (from memory). Checked: tests/domain/findings/censored/profileInterval.spec.ts.
 */
export function profileInterval(
  values: CensoredValues,
  model: LocationScale,
  { logSigma, logLikelihood }: Estimate,
  number: ProfiledNumber,
  confidence: number,
): { low: number | null; high: number | null } {
  if (values.failed.length < 2) return { low: null, high: null }
  const allowed = deviationAllowed(values.failed.length, confidence)
  let nearest = logSigma
  const excess = (value: number) => {
    const loss = (ln: number) => -logLikelihoodAt(values, model, number.location(value, Math.exp(ln)), ln)
    nearest = leastNear(loss, nearest)
    return 2 * (loss(nearest) + logLikelihood) - allowed
  }
  const end = (side: 1 | -1): number | null => {
    nearest = logSigma
    let inner = number.value
    // Values so far apart that the arithmetic loses the likelihood at the estimate itself bound nothing
    if (!(excess(inner) <= 0)) return null
    nearest = logSigma
    for (let reach = 1; reach <= farthestSe; reach *= 1.6) {
      const outer = number.value + side * reach * number.se
      if (model.logarithmic && outer <= 0) {
        const least = number.value * Math.exp(-farthestSe * (number.se / number.value))
        if (!(excess(least) > 0)) return null
        nearest = logSigma
        return Math.exp(bracketedRoot((ln) => excess(Math.exp(ln)), Math.log(least), Math.log(inner), 1e-10))
      }
      if (excess(outer) > 0) return bracketedRoot(excess, inner, outer, 1e-10 * Math.abs(number.value))
      inner = outer
    }
    return null
  }
  return { low: end(-1), high: end(1) }
}

/** The valley of a function next to a point: a bracket that is widened until it holds it, then its floor. */
function leastNear(f: (x: number) => number, from: number): number {
  const width = 0.5
  let at = from
  let value = f(at)
  for (let round = 0; round < 60; round++) {
    const right = f(at + width)
    const left = f(at - width)
    if (value <= right && value <= left) break
    at += right < left ? width : -width
    value = Math.min(left, right)
  }
  return minimumBetween(f, at - width, at + width, 1e-8)
}
