import * as z from 'zod'
import { listQuery } from '../listQuery.ts'
import { changesPage, changesQuery } from '../reevaluation/changes.ts'
import { reevaluation, reevaluationSummary } from '../reevaluation/reevaluation.ts'
import { signature } from '../signature.ts'
import { finite, id, positive } from '../values.ts'
import { breakRecord } from './break.ts'
import { comparison, comparisonRequest } from './comparison.ts'
import { forceCurve } from './curve.ts'
import { curveFilter } from './curveFilter.ts'

const nothing = z.strictObject({})
const breakId = z.strictObject({ breakId: id })
const reevaluationId = z.strictObject({ reevaluationId: id })
const drawn = {
  fromS: finite.nullable().default(null),
  toS: finite.nullable().default(null),
  maxPoints: z.int().min(100).nullable().default(null),
}

/** Reviewing curves: looked at, compared, overruled, and evaluated once more. */
export const reviewProcedures = {
  /** Numbers of all breaks that fit, in the order of the query. */
  'breaks.ids': { input: listQuery.omit({ offset: true, limit: true }), output: z.array(id) },
  /** The breaks of its group: same adhesive, joint type, gap, exposure and age (whole months); the given one among them. */
  'breaks.group': { input: breakId, output: z.strictObject({ name: z.string(), breakIds: z.array(id) }) },

  /** The curve as a filter shows it; `name` names the filter with its figures. */
  'breaks.filtered': {
    input: z.strictObject({ ...breakId.shape, ...drawn, filter: curveFilter }),
    output: z.strictObject({ curve: forceCurve, name: z.string() }),
  },
  /** Slope of the curve, N/s (counts/s), by least squares over a window about each sample. */
  'breaks.slope': {
    input: z.strictObject({ ...breakId.shape, ...drawn, windowS: positive }),
    output: forceCurve,
  },
  /** Runs as the task "comparison"; rejects with `cancelled` when it is stopped. */
  'comparison.make': { input: comparisonRequest, output: comparison },

  /** The sample nearest to the time stands for the peak. */
  'breaks.pickPeak': {
    input: z.strictObject({ ...breakId.shape, timeS: finite, ...signature.shape }),
    output: breakRecord,
  },
  /** The load before the first early drop (pop-in, or the first of stick-slip) stands for the failure. */
  'breaks.declarePremature': { input: z.strictObject({ ...breakId.shape, ...signature.shape }), output: breakRecord },
  /** Takes either back. */
  'breaks.peakAsFound': { input: z.strictObject({ ...breakId.shape, ...signature.shape }), output: breakRecord },

  /** Begins in the background as the task "reevaluation", one at a time; resolves as soon as it is recorded. */
  'reevaluations.begin': {
    input: reevaluation
      .pick({ breakIds: true, calibrationId: true, settings: true })
      .extend({ by: signature.shape.by })
      .refine(({ settings: { endCodes } }) => !endCodes || endCodes[0] < endCodes[1], {
        path: ['settings', 'endCodes'],
        error: 'the lowest code must lie below the highest',
      }),
    output: reevaluationSummary,
  },
  /** Newest first. */
  'reevaluations.list': { input: nothing, output: z.array(reevaluationSummary) },
  'reevaluations.get': { input: reevaluationId, output: reevaluationSummary },
  'reevaluations.changes': { input: changesQuery, output: changesPage },
  /** Adopts all its results, or takes them out of force; one recorded decision. */
  'reevaluations.decide': {
    input: z.strictObject({ ...reevaluationId.shape, kind: z.enum(['adopted', 'dropped']), ...signature.shape }),
    output: reevaluationSummary,
  },
} as const
