import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { topicsOf } from '../topics.ts'
import { id, nothing } from '../values.ts'
import { changesPage, changesQuery } from './changes.ts'
import { reevaluation, reevaluationSummary } from './reevaluation.ts'

const reevaluationId = z.strictObject({ reevaluationId: id })
const theOne = (input: { reevaluationId: number }) => topicsOf('reevaluation', [input.reevaluationId])

/** Breaks evaluated once more: begun, looked at, and adopted or dropped by one decision. */
export const reevaluationProcedures = {
  /** Begins in the background as the task `reevaluation`, one at a time; resolves as soon as it is recorded. */
  'reevaluations.begin': deed({
    input: reevaluation
      .pick({ breakIds: true, calibrationId: true, settings: true })
      .extend({ by: signature.shape.by })
      .refine(({ settings: { endCodes } }) => !endCodes || endCodes[0] < endCodes[1], {
        path: ['settings', 'endCodes'],
        error: 'the lowest code must lie below the highest',
      }),
    output: reevaluationSummary,
  }),
  /** Newest first. */
  'reevaluations.list': question({
    input: nothing,
    output: z.strictObject({ rows: z.array(reevaluationSummary), unreadable: unreadableRecords }),
    reads: () => ['reevaluations'],
  }),
  'reevaluations.get': question({ input: reevaluationId, output: reevaluationSummary, reads: theOne }),
  /** Shows of each break whether it counts, and a person's word on its peak. */
  'reevaluations.changes': question({
    input: changesQuery,
    output: changesPage,
    reads: (query) => [...theOne(query), 'results'],
  }),
  /** Adopts all its results, or takes them out of force; one recorded decision. */
  'reevaluations.decide': deed({
    input: z.strictObject({ ...reevaluationId.shape, kind: z.enum(['adopted', 'dropped']), ...signature.shape }),
    output: reevaluationSummary,
  }),
}
