import * as z from 'zod'

/** One page of a searched, sorted list. */
export const listQuery = z.strictObject({
  /**
   * Every word must occur in what a row shows (figures in either unit, day, outcome, remarks, events, simulated) or in number,
   * adhesive, joint type, exposure, place or note; case does not matter. A number behind "gap" or "peak" is that figure.
   */
  text: z.string().max(1000).default(''),
  status: z.enum(['all', 'waiting', 'broken', 'set-aside', 'withdrawn']).default('all'),
  sort: z
    .enum(['number', 'adhesive', 'jointType', 'exposure', 'startedAt', 'peakN', 'strengthMPa', 'woodFailurePercent'])
    .default('number'),
  descending: z.boolean().default(false),
  offset: z.int().nonnegative().default(0),
  limit: z.int().positive().max(1000).default(200),
})
export type ListQuery = z.infer<typeof listQuery>
