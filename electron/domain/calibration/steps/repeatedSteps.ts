/**
 * The step that each reading belongs to, for telling repeats apart: those of equal force, or of equal reading where that
 * brings more of them together (loads measured rather than set).
 *
 * Source: definition of a replicate. Checked: tests/domain/calibration/steps/repeatedSteps.spec.ts.
 */
export function repeatedSteps(readings: readonly number[], forceStepsN: readonly number[]): readonly number[] {
  return new Set(readings).size < new Set(forceStepsN).size ? readings : forceStepsN
}
