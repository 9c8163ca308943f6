import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { listQuery } from '../listQuery.ts'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { topicsOf } from '../topics.ts'
import { finite, id, note, positive, words } from '../values.ts'
import { assessment } from './assessment.ts'
import { breakRecord, breakRow } from './break.ts'
import { groupTraits } from './breakGroup.ts'
import { comparison, comparisonRequest } from './comparison.ts'
import { forceCurve } from './curve.ts'
import { curveFilter } from './curveFilter.ts'
import { setAsideCause } from './decision.ts'

const breakId = z.strictObject({ breakId: id })
const signed = z.strictObject({ ...breakId.shape, ...signature.shape })
/** maxPoints: thinned by minimum and maximum to at most so many points; the peak always stays. */
const drawn = z.strictObject({
  ...breakId.shape,
  fromS: finite.nullable().default(null),
  toS: finite.nullable().default(null),
  maxPoints: z.int().min(100).nullable().default(null),
})
const theBreak = (input: { breakId: number }) => topicsOf('break', [input.breakId])
const theCurve = (input: { breakId: number }) => topicsOf('curve', [input.breakId])

/** Breaks: listed, opened, drawn and compared; assessed, and overruled by a decision that stands beside them. */
export const breakProcedures = {
  'breaks.list': question({
    input: listQuery,
    output: z.strictObject({ total: z.int(), rows: z.array(breakRow), unreadable: unreadableRecords }),
    // A row shows the title of its study
    reads: () => ['breaks', 'studies'],
  }),
  /** Numbers of all breaks that fit, in the order of the query. */
  'breaks.ids': question({
    input: listQuery.omit({ offset: true, limit: true }),
    output: z.array(id),
    reads: () => ['breaks'],
  }),
  /** The breaks of its group: same adhesive, joint type, gap, exposure and age (that of their pull, else whole months), the given one among
   * them; `common` is null for a break that belongs to no specimen. */
  'breaks.group': question({
    input: breakId,
    output: z.strictObject({ common: groupTraits.nullable(), breakIds: z.array(id) }),
    // Windows of pulls say of which age a block is
    reads: () => ['results', 'studies'],
  }),
  'breaks.get': question({ input: breakId, output: breakRecord, reads: theBreak }),

  'breaks.curve': question({ input: drawn, output: forceCurve, reads: theCurve }),
  /** The curve as a filter shows it. */
  'breaks.filtered': question({
    input: drawn.extend({ filter: curveFilter }),
    output: forceCurve,
    reads: theCurve,
  }),
  /** Slope of the curve, N/s (counts/s), by least squares over a window about each sample. */
  'breaks.slope': question({ input: drawn.extend({ windowS: positive }), output: forceCurve, reads: theCurve }),
  /** Runs as the task `comparison`; rejects with `cancelled` when it is stopped. */
  'comparison.make': question({
    input: comparisonRequest,
    output: comparison,
    reads: ({ breakIds }) => topicsOf('result', breakIds),
  }),

  'breaks.assess': deed({
    input: assessment
      .pick({ woodFailurePercent: true, failurePattern: true })
      .extend({ ...breakId.shape, note, by: words }),
    output: breakRecord,
  }),
  'breaks.setAside': deed({ input: signed.extend({ cause: setAsideCause.default('other') }), output: breakRecord }),
  'breaks.takeBack': deed({ input: signed, output: breakRecord }),
  'breaks.reassign': deed({ input: signed.extend({ specimenId: id.nullable() }), output: breakRecord }),
  /** The sample nearest to the time stands for the peak. */
  'breaks.pickPeak': deed({ input: signed.extend({ timeS: finite }), output: breakRecord }),
  /** The load before the first early drop (pop-in, or the first of stick-slip) stands for the failure. */
  'breaks.declarePremature': deed({ input: signed, output: breakRecord }),
  /** Takes either back. */
  'breaks.peakAsFound': deed({ input: signed, output: breakRecord }),
}
