import { regularizedBeta } from './incompleteBeta.ts'
import { normalProbability, normalQuantile } from './normal.ts'
import { positiveQuantile } from './quantileSearch.ts'

/** Probability above |t|, one side. */
function outside(t: number, df: number): number {
  if (!(df > 0)) throw new RangeError('Student t requires degrees of freedom above 0')
  if (df === Number.POSITIVE_INFINITY) return normalProbability(-Math.abs(t))
  const square = t * t
  if (square === Number.POSITIVE_INFINITY) return 0
  return 0.5 * regularizedBeta(df / 2, 0.5, df / (df + square), square / (df + square)).lower
}

/**
 * Probability that Student's t is at most t.
 *
 *   P = 1 − ½ I_x(ν/2, ½) for t ≥ 0,  x = ν / (ν + t²);  ½ I_x for t < 0.  ν may be Infinity: the normal distribution.
 *
 * Throws RangeError for ν not positive.
 * Source: NIST/SEMATECH e-Handbook 1.3.6.6.4. Checked: tests/domain/numbers/distributions/studentT.spec.ts against R pt.
 */
export function tProbability(t: number, df: number): number {
  return t < 0 ? outside(t, df) : 1 - outside(t, df)
}

/**
 * Probability that Student's t lies farther from 0 than t, on both sides together.
 *
 *   I_x(ν/2, ½),  x = ν / (ν + t²)
 *
 * Throws RangeError for ν not positive.
 * Source: NIST/SEMATECH e-Handbook 1.3.6.6.4. Checked: tests/domain/numbers/distributions/studentT.spec.ts against R pt.
 */
export function tTwoSided(t: number, df: number): number {
  return 2 * outside(t, df)
}

/**
 * Value below which Student's t lies with probability p.
 *
 * Throws RangeError for p outside 0..1 or ν not positive. ν may be Infinity: the normal distribution.
 * Source: inverse of tProbability. Checked: tests/domain/numbers/distributions/studentT.spec.ts against R qt.
 */
export function tQuantile(p: number, df: number): number {
  if (df === Number.POSITIVE_INFINITY) return normalQuantile(p)
  if (!(p >= 0 && p <= 1)) throw new RangeError('A quantile requires a probability from 0 to 1')
  if (p === 0.5) return 0
  const tail = 2 * Math.min(p, 1 - p)
  const size = positiveQuantile(
    (t) => {
      const upper = 2 * outside(t, df)
      return { lower: 1 - upper, upper }
    },
    1 - tail,
    tail,
  )
  return p < 0.5 ? -size : size
}

/**
 * How many standard errors an interval of a confidence (a share, as 0.95) reaches to either side: the two-sided quantile.
 *
 *   t with P(|T| > t) = 1 − confidence
 *
 * Throws RangeError for a confidence outside 0..1 or ν not positive. ν may be Infinity: the normal distribution.
 * Source: NIST/SEMATECH e-Handbook 1.3.5.2. Checked: tests/domain/numbers/distributions/studentT.spec.ts against its table 1.3.6.7.2.
 */
export function tCritical(confidence: number, df: number): number {
  if (!(confidence >= 0 && confidence <= 1)) throw new RangeError('An interval requires a confidence from 0 to 1')
  return -tQuantile((1 - confidence) / 2, df)
}
