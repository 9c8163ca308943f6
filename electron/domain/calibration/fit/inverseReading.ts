import { bracketedRoot } from '../../numbers/bracketedRoot.ts'
import { tQuantile } from '../../numbers/distributions/studentT.ts'
import { isMonotone } from './polynomial.ts'
import type { PolynomialFit } from './polynomialFit.ts'
import { fittedValue, standardErrorOfNew } from './prediction.ts'

/** The x whose fitted y was read, with its interval; an end is null where the interval is open on that side. */
export type InverseReading = { readonly x: number; readonly lower: number | null; readonly upper: number | null }

/** How far beyond the data an end of the interval is looked for, in half-widths of the data. */
const beyond = 1

/**
 * The x at which a fitted curve has the value y, with the interval that a new reading allows, in the unit of x.
 *
 *   x₀: p(x₀) = y      ends: |y − p(x)| = t(1 − α/2, ν) sqrt( s²/m + u(p(x))² )
 *
 * s residual SD, m readings averaged into y, u standard error of the curve at x, ν degrees of freedom, α = 1 − confidence.
 * For a line this is Fieller's interval. An end that lies farther than half the width of the data outside is given as null.
 * Throws RangeError when y is outside what the curve reaches over `range` (widened by 5 %), the curve turns back inside it,
 * there are no degrees of freedom, the confidence is outside 0..1 or m is below 1.
 * Source: NIST/SEMATECH e-Handbook 4.6.1.7 and 4.5.2.1. Checked: tests/domain/calibration/fit/inverseReading.spec.ts
 * against the handbook's load and R's predict.lm with uniroot.
 */
export function inverseReading(
  fit: PolynomialFit,
  y: number,
  range: readonly [number, number],
  confidence = 0.95,
  m = 1,
): InverseReading {
  const { residualSD, degreesOfFreedom, coefficients, centred } = fit
  if (residualSD === null) throw new RangeError('inverseReading requires degrees of freedom above 0')
  if (!(confidence > 0 && confidence < 1)) throw new RangeError('inverseReading requires a confidence between 0 and 1')
  const half = (range[1] - range[0]) / 2
  const low = range[0] - 0.1 * half
  const high = range[1] + 0.1 * half
  if (!isMonotone(coefficients, range[0], range[1]))
    throw new RangeError('inverseReading requires a curve that rises or falls all the way')
  const gap = (x: number) => fittedValue(centred, x) - y
  if (gap(low) > 0 === gap(high) > 0)
    throw new RangeError('inverseReading requires a value inside the range of the fit')
  const x = bracketedRoot(gap, low, high)
  const factor = tQuantile((1 + confidence) / 2, degreesOfFreedom)
  // Negative between the two ends of the interval, positive outside.
  const outside = (at: number) => Math.abs(gap(at)) - factor * standardErrorOfNew(centred, residualSD, at, m)
  const end = (limit: number) => (outside(limit) < 0 ? null : bracketedRoot(outside, x, limit))
  return { x, lower: end(range[0] - beyond * half), upper: end(range[1] + beyond * half) }
}
