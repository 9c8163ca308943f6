import type { LackOfFitTest } from '#contract/calibration/calibrationAssessment.ts'
import { fUpperTail } from '../../numbers/distributions/fisherF.ts'

/**
 * F test of lack of fit against pure error; null where no step was repeated or no step is left over to test with.
 *
 *   pure error = Σ_g Σᵢ (e_gi − ē_g)²,  ν = n − G      lack of fit = Σ_g n_g ē_g²,  ν = G − p      F = ratio of their mean squares
 *
 * e residuals, g the step each belongs to (equal `step` numbers), G steps, p coefficients found. With x as the step this is the
 * textbook test. With the applied force as the step it tests the curve force(reading) in use: the force is the same for all
 * readings of a step, so the spread of residuals within a step is the spread of the readings alone.
 * Throws RangeError for residuals and steps of unlike length or p below 1.
 * Source: NIST/SEMATECH e-Handbook 4.4.4.6. Checked: tests/domain/calibration/fit/lackOfFit.spec.ts against its case study 4.6.1.
 */
export function lackOfFit(
  residuals: readonly number[],
  steps: readonly number[],
  coefficients: number,
): LackOfFitTest | null {
  if (residuals.length !== steps.length) throw new RangeError('lackOfFit requires one step for every residual')
  if (!(coefficients >= 1)) throw new RangeError('lackOfFit requires at least one coefficient')
  const groups = Map.groupBy(residuals.keys(), (index) => steps[index]!)
  const lackDegreesOfFreedom = groups.size - coefficients
  const pureDegreesOfFreedom = residuals.length - groups.size
  if (lackDegreesOfFreedom < 1 || pureDegreesOfFreedom < 1) return null
  let pure = 0
  let lack = 0
  for (const indexes of groups.values()) {
    const values = indexes.map((index) => residuals[index]!)
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length
    lack += values.length * mean * mean
    for (const value of values) pure += (value - mean) ** 2
  }
  const pureMean = pure / pureDegreesOfFreedom
  const lackMean = lack / lackDegreesOfFreedom
  // Repeats that agree to the last digit leave no pure error: any lack of fit is then beyond doubt, none is none.
  const f = pureMean > 0 ? lackMean / pureMean : lackMean > 0 ? Number.MAX_VALUE : 0
  return {
    f,
    lackDegreesOfFreedom,
    pureDegreesOfFreedom,
    pureErrorSD: Math.sqrt(pureMean),
    pValue: fUpperTail(f, lackDegreesOfFreedom, pureDegreesOfFreedom),
  }
}
