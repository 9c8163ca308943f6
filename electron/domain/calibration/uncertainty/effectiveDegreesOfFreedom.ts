/** One standard uncertainty with its degrees of freedom; null: infinitely many. */
export type UncertaintyWithFreedom = {
  readonly standardUncertainty: number
  readonly degreesOfFreedom: number | null
}

/**
 * Effective degrees of freedom of a combined standard uncertainty; null: infinitely many.
 *
 *   ν_eff = u_c⁴ / Σ ( uᵢ⁴ / νᵢ ),  u_c² = Σ uᵢ²      (Welch and Satterthwaite)
 *
 * uᵢ standard uncertainties of one unit, νᵢ their degrees of freedom. u_c is not rounded before: rounding it first moves the
 * answer (17.47 instead of 16.66 in JCGM 100 H.1).
 * Throws RangeError for a negative uncertainty or degrees of freedom that are not positive.
 * Source: JCGM 100 G.4.1. Checked: tests/domain/calibration/uncertainty/effectiveDegreesOfFreedom.spec.ts against JCGM 100 H.1.
 */
export function effectiveDegreesOfFreedom(contributions: readonly UncertaintyWithFreedom[]): number | null {
  let combined = 0
  let denominator = 0
  // Shares of the largest one, so that the fourth powers neither overflow nor vanish.
  const largest = contributions.reduce((most, { standardUncertainty }) => Math.max(most, standardUncertainty), 0)
  for (const { standardUncertainty, degreesOfFreedom } of contributions) {
    if (!(standardUncertainty >= 0))
      throw new RangeError('effectiveDegreesOfFreedom requires uncertainties of 0 or more')
    if (degreesOfFreedom !== null && !(degreesOfFreedom > 0))
      throw new RangeError('effectiveDegreesOfFreedom requires degrees of freedom above 0')
    if (largest === 0) continue
    const share = standardUncertainty / largest
    combined += share * share
    if (degreesOfFreedom !== null) denominator += share ** 4 / degreesOfFreedom
  }
  return denominator === 0 ? null : (combined * combined) / denominator
}
