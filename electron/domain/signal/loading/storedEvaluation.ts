import type { BreakHeader, Ending } from '#contract/breaks/capture.ts'
import type { EvaluationResult, Flag, NewEvaluation } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'
import { verifiedRangeFlags } from '../../calibration/verificationOf.ts'
import { detectionMethod } from './evaluateCurve.ts'

/** What a result must be read with because of where its force comes from. */
function scaleFlags(scale: ForceScale): Flag[] {
  if (scale.kind === 'none') return ['no-scale']
  return scale.kind === 'calibration' ? [] : ['uncalibrated']
}

/** Lowest and highest force that the calibration was verified for; null: there is none. */
export type VerifiedRange = readonly [number, number] | null

/** A result with the flags that the curve alone cannot know: doubts about the scale, and how the capture ended. */
export function flaggedResult(
  result: EvaluationResult,
  scale: ForceScale,
  ending: Ending,
  verifiedRangeN: VerifiedRange,
): EvaluationResult {
  const flags = [
    ...result.flags,
    ...scaleFlags(scale),
    ...(scale.kind === 'calibration' ? verifiedRangeFlags(verifiedRangeN, result.peakN) : []),
    ...(ending === 'complete' ? [] : [ending]),
  ]
  return { ...result, flags: [...new Set(flags)] }
}

/** The evaluation that is stored beside a curve, with all that is needed to make it again. */
export function storedEvaluation(
  header: Pick<BreakHeader, 'settings' | 'scale' | 'tare'>,
  result: EvaluationResult,
  ending: Ending,
  madeAt: string,
  verifiedRangeN: VerifiedRange,
): Omit<NewEvaluation, 'breakId' | 'result'> & { result: EvaluationResult } {
  return {
    madeAt,
    method: detectionMethod,
    settings: header.settings,
    scale: header.scale,
    tareOffset: header.tare?.offset ?? 0,
    result: flaggedResult(result, header.scale, ending, verifiedRangeN),
  }
}
