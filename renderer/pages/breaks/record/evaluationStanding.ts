import type { DetectionChange, DetectionSettings } from '#contract/breaks/detection.ts'
import type { Evaluation } from '#contract/breaks/evaluation.ts'
import type { ReevaluationSummary } from '#contract/reevaluation/reevaluation.ts'

/** How an evaluation stands beside the others. */
export type EvaluationStanding = 'in force' | 'kept' | 'proposed by' | 'not in force'

/** `reevaluations`: as far as they are known; a result whose re-evaluation is not known of is proposed, no more. */
export function standingOf(
  { evaluationId, reevaluationId }: Pick<Evaluation, 'evaluationId' | 'reevaluationId'>,
  inForceId: number | null,
  reevaluations: readonly Pick<ReevaluationSummary, 'reevaluationId' | 'decisions'>[],
): EvaluationStanding {
  if (evaluationId === inForceId) return 'in force'
  if (reevaluationId === null) return 'kept'
  const decision = reevaluations.find((one) => one.reevaluationId === reevaluationId)?.decisions.at(-1)
  if (decision === undefined) return 'proposed by'
  return decision.kind === 'adopted' ? 'kept' : 'not in force'
}

/** The thresholds of an evaluation that differ from those at capture. The start threshold follows from them and is left out. */
export function changedSettings(made: DetectionSettings, atCapture: DetectionSettings): DetectionChange {
  const { startThresholdN: _follows, preTriggerS: _captureAlone, ...compared } = made
  return Object.fromEntries(
    Object.entries(compared).filter(
      ([key, value]) => JSON.stringify(value) !== JSON.stringify(atCapture[key as keyof DetectionSettings]),
    ),
  )
}
