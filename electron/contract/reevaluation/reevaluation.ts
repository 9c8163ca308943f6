import * as z from 'zod'
import { detectionChange } from '../breaks/detection.ts'
import { id, isoInstant, kept } from '../values.ts'

/** Breaks evaluated once more, all in the same way. Its results stand beside the ones in force until a person adopts them. */
export const reevaluation = z.strictObject({
  reevaluationId: id,
  begunAt: isoInstant,
  by: kept.min(1),
  /** The method that made the results. */
  method: z.string(),
  /** The calibration that all were evaluated under; null: each under the scale of its result in force. */
  calibrationId: id.nullable(),
  /** Thresholds that differ from those at capture. */
  settings: detectionChange,
  breakIds: z.array(id).min(1),
})
export type Reevaluation = z.infer<typeof reevaluation>

/** complete: all breaks. cancelled: a person stopped it. cut-short: it failed, or the program ended while it ran. */
export const reevaluationEnd = z.strictObject({
  reevaluationId: id,
  endedAt: isoInstant,
  ending: z.enum(['complete', 'cancelled', 'cut-short']),
  /** Breaks that could not be evaluated, each with the reason. */
  problems: z.array(z.strictObject({ breakId: id, message: kept })),
})
export type ReevaluationEnd = z.infer<typeof reevaluationEnd>

/** A person's word on all results of a re-evaluation: in force from then on, or no longer (or not at all). The newest decides. */
export const reevaluationDecision = z.strictObject({
  reevaluationDecisionId: id,
  reevaluationId: id,
  recordedAt: isoInstant,
  by: kept.min(1),
  reason: kept.min(1),
  kind: z.enum(['adopted', 'dropped']),
})
export type ReevaluationDecision = z.infer<typeof reevaluationDecision>

export const reevaluationSummary = z.strictObject({
  ...reevaluation.omit({ breakIds: true }).shape,
  breaks: z.int(),
  evaluated: z.int(),
  /** null while it runs. */
  end: reevaluationEnd.nullable(),
  /** Newest last. */
  decisions: z.array(reevaluationDecision),
})
export type ReevaluationSummary = z.infer<typeof reevaluationSummary>
