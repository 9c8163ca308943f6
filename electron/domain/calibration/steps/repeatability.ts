/** SD of one reading about its step, pooled over all steps, with its degrees of freedom. */
export type Repeatability = { readonly sdN: number; readonly degreesOfFreedom: number }

/**
 * SD of single readings about the mean of their step, pooled over steps, in the unit of the values; null without repeats.
 *
 *   s² = Σ_g Σᵢ (x_gi − x̄_g)² / Σ_g (n_g − 1)
 *
 * Throws RangeError for values and steps of unlike length.
 * Source: NIST/SEMATECH e-Handbook 4.4.4.6 (pure error). Checked: tests/domain/calibration/steps/repeatability.spec.ts.
 */
export function pooledRepeatability(values: readonly number[], steps: readonly number[]): Repeatability | null {
  if (values.length !== steps.length) throw new RangeError('pooledRepeatability requires one step for every value')
  let squares = 0
  let degreesOfFreedom = 0
  for (const indexes of Map.groupBy(values.keys(), (index) => steps[index]!).values()) {
    const group = indexes.map((index) => values[index]!)
    const mean = group.reduce((sum, value) => sum + value, 0) / group.length
    for (const value of group) squares += (value - mean) ** 2
    degreesOfFreedom += group.length - 1
  }
  return degreesOfFreedom > 0 ? { sdN: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom } : null
}

/**
 * The SD that stands for one reading: the larger of the spread of repeats and the spread about the curve, N.
 *
 * Both estimate the same thing where the curve fits, the second from more readings; the larger is the cautious one. Where the
 * curve does not fit, or falling load is in it, `aboutCurve` is null and the repeats stand alone.
 * Throws RangeError when neither is known.
 * Source: common practice, no source. Checked: tests/domain/calibration/steps/repeatability.spec.ts.
 */
export function readingSpread(repeats: Repeatability | null, aboutCurve: Repeatability | null): Repeatability {
  if (repeats === null && aboutCurve === null) throw new RangeError('readingSpread requires one of the two')
  if (repeats === null) return aboutCurve!
  if (aboutCurve === null) return repeats
  return aboutCurve.sdN > repeats.sdN ? aboutCurve : repeats
}
