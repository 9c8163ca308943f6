import * as z from 'zod'
import { overruledPeak, setAsideCause } from '../breaks/break.ts'
import { detectionChange } from '../breaks/detection.ts'
import { flag, outcome } from '../breaks/evaluation.ts'
import { finite, id, isoInstant } from '../calibration/force.ts'

/** Breaks evaluated once more, all in the same way. Its results stand beside the ones in force until a person adopts them. */
export const reevaluation = z.strictObject({
  reevaluationId: id,
  begunAt: isoInstant,
  by: z.string().min(1),
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
  problems: z.array(z.strictObject({ breakId: id, message: z.string() })),
})
export type ReevaluationEnd = z.infer<typeof reevaluationEnd>

/** A person's word on all results of a re-evaluation: in force from then on, or no longer (or not at all). The newest decides. */
export const reevaluationDecision = z.strictObject({
  reevaluationDecisionId: id,
  reevaluationId: id,
  recordedAt: isoInstant,
  by: z.string().min(1),
  reason: z.string().min(1),
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

const side = z.strictObject({
  evaluationId: id,
  method: z.string(),
  outcome,
  peakN: finite.nullable(),
  flags: z.array(flag),
  /** Kinds of its events, in order of time; those of stick-slip with the number of cycles: "stick-slip 5". */
  events: z.array(z.string()),
})

/** One line of the table of what changed: the result that was in force, and the new one beside it. */
export const resultChange = z.strictObject({
  breakId: id,
  number: z.string().nullable(),
  adhesive: z.string().nullable(),
  /** A person's word in place of the peak: it stands over both results. */
  overruled: overruledPeak.nullable(),
  /** Why the break is set aside; null where it counts. */
  setAside: z.string().nullable(),
  setAsideCause: setAsideCause.nullable(),
  before: side,
  now: side,
  differenceN: finite.nullable(),
  /** Of the peak before. */
  differencePercent: finite.nullable(),
  changed: z.strictObject({ outcome: z.boolean(), peak: z.boolean(), flags: z.boolean(), events: z.boolean() }),
})
export type ResultChange = z.infer<typeof resultChange>

export const changesQuery = z.strictObject({
  reevaluationId: id,
  only: z.enum(['all', 'changed', 'outcome', 'peak', 'flags', 'events']).default('all'),
  /** difference: by the size of the difference in percent, whichever its sign. */
  sort: z.enum(['number', 'difference']).default('number'),
  descending: z.boolean().default(false),
  offset: z.int().nonnegative().default(0),
  limit: z.int().positive().max(1000).default(200),
})
export type ChangesQuery = z.infer<typeof changesQuery>

export const changesPage = z.strictObject({
  total: z.int(),
  rows: z.array(resultChange),
  /** Over all results of the re-evaluation, whatever the page shows. */
  figures: z.strictObject({
    results: z.int(),
    outcomes: z.int(),
    peaks: z.int(),
    flags: z.int(),
    events: z.int(),
    /** Those whose peak is as a person said, and those set aside, whatever the results are. */
    overruled: z.int(),
    setAside: z.int(),
    /** Of the peaks that changed, with their signs; the largest is the one farthest from 0. */
    meanDifferencePercent: finite.nullable(),
    largestDifferencePercent: finite.nullable(),
  }),
})
export type ChangesPage = z.infer<typeof changesPage>
