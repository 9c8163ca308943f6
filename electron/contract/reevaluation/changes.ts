import * as z from 'zod'
import { overruledPeak, setAsideCause } from '../breaks/decision.ts'
import { flag, outcome } from '../breaks/evaluation.ts'
import { finite, id } from '../values.ts'

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
  /** Nobody measured it. */
  simulated: z.boolean(),
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
