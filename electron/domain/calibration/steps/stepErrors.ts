import type { StepErrors } from './accuracyClass.ts'

/** What was indicated at one applied force, N. */
export type StepReadings = {
  readonly forceN: number
  /** With increasing force, one for each run. */
  readonly increasingN: readonly number[]
  /** With increasing and with decreasing force in the same run. */
  readonly pairsN: readonly { readonly upN: number; readonly downN: number }[]
  readonly resolutionN: number | null
  /** Left over at zero force after unloading; the largest of the runs. */
  readonly zeroErrorN: number | null
  readonly highestForceN: number
}

const largestInSize = (values: readonly number[]) =>
  values.reduce<number | null>(
    (most, value) => (most === null || Math.abs(value) > Math.abs(most) ? value : most),
    null,
  )

/**
 * Relative errors of one step in percent, in the manner of ISO 7500-1; null where the data cannot give one.
 *
 *   q = (F̄ᵢ − F)/F    b = (Fᵢ,max − Fᵢ,min)/F    v = (F′ᵢ − Fᵢ)/F    f0 = Fᵢ₀/F_N    a = r/F      each times 100
 *
 * F applied, Fᵢ indicated with increasing and F′ᵢ with decreasing force, Fᵢ₀ indicated after unloading, F_N the highest force
 * applied, r resolution, all N. b needs two runs. Of several runs v and f0 are the ones largest in size.
 * Throws RangeError for a force or a highest force that is not positive.
 * Source: ISO 7500-1 (definitions from memory). Checked: tests/domain/calibration/steps/stepErrors.spec.ts.
 */
export function stepErrors(step: StepReadings): StepErrors {
  const { forceN, increasingN, pairsN, resolutionN, zeroErrorN, highestForceN } = step
  if (!(forceN > 0 && highestForceN > 0)) throw new RangeError('stepErrors requires forces above 0')
  const percent = (partN: number) => (100 * partN) / forceN
  const mean = increasingN.reduce((sum, value) => sum + value, 0) / increasingN.length
  return {
    q: increasingN.length > 0 ? percent(mean - forceN) : null,
    b: increasingN.length > 1 ? percent(Math.max(...increasingN) - Math.min(...increasingN)) : null,
    v: largestInSize(pairsN.map(({ upN, downN }) => percent(downN - upN))),
    f0: zeroErrorN === null ? null : (100 * zeroErrorN) / highestForceN,
    a: resolutionN === null ? null : percent(resolutionN),
  }
}
