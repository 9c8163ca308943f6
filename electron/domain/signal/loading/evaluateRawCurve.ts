import type { BreakHeader } from '#contract/breaks/capture.ts'
import type { RawCurve } from '#contract/breaks/curve.ts'
import type { DetectionSettings } from '#contract/breaks/detection.ts'
import type { EvaluationResult } from '#contract/breaks/evaluation.ts'
import { settingsWithoutForce, taredForce, withoutForce } from '../../calibration/scale/forceScale.ts'
import { evaluateCurve } from './evaluateCurve.ts'

/**
 * Evaluates the raw curve of a break under a scale, a tare and settings: those of its header, or others.
 * Checked: tests/domain/signal/loading/evaluateRawCurve.spec.ts.
 */
export function evaluateRawCurve(
  curve: RawCurve,
  circumstances: Pick<BreakHeader, 'scale' | 'readingUnit' | 'tare' | 'settings'>,
): EvaluationResult {
  const { scale, readingUnit, tare, settings } = circumstances
  const { force, unit } = taredForce(curve.readings, scale, readingUnit, tare?.offset ?? 0)
  const evaluated = (under: DetectionSettings) => evaluateCurve(curve.timeS, force, curve.readings, under)
  return unit === 'counts' ? withoutForce(evaluated(settingsWithoutForce(settings))) : evaluated(settings)
}
