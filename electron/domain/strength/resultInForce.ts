import type { BreakRecord } from '#contract/breaks/break.ts'
import type { Evaluation } from '#contract/breaks/evaluation.ts'
import type { ForceScale } from '#contract/calibration/forceScale.ts'

/** The evaluation that counts, which is not always the newest; null: there is none yet. */
export function resultInForce({
  evaluations,
  inForceId,
}: Pick<BreakRecord, 'evaluations' | 'inForceId'>): Evaluation | null {
  return evaluations.find(({ evaluationId }) => evaluationId === inForceId) ?? null
}

/**
 * The scale and the zero (in its force) under which the result in force of a break was found; those of the capture while it
 * has no result. A curve shown or written beside that result must be under the same, so that its peak is the peak stated.
 */
export function scaleInForce(record: Pick<BreakRecord, 'header' | 'evaluations' | 'inForceId'>): {
  scale: ForceScale
  tareOffset: number
} {
  const { header } = record
  const { scale, tareOffset } = resultInForce(record) ?? { scale: header.scale, tareOffset: header.tare?.offset ?? 0 }
  return { scale, tareOffset }
}
