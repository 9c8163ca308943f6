import * as z from 'zod'
import { finite, id, words } from './values.ts'

const bound = finite.nonnegative().nullable().default(null)

/**
 * Of what specimens must be made and kept to stand in a list; '' and null: it does not matter. A name stands for what the catalogue
 * knows under it, whatever else it is called there. Gaps in mm; ages in months, of a specimen without a result that of its pull.
 */
export const listFilter = z.strictObject({
  adhesive: words.default(''),
  lot: words.default(''),
  wood: words.default(''),
  board: words.default(''),
  jointType: words.default(''),
  exposure: words.default(''),
  place: words.default(''),
  studyId: id.nullable().default(null),
  gapLeastMm: bound,
  gapMostMm: bound,
  ageLeastMonths: bound,
  ageMostMonths: bound,
})
export type ListFilter = z.infer<typeof listFilter>
/** As it is asked: what is left out does not matter. */
export type AskedFilter = z.input<typeof listFilter>

/** A filter that lets every row through. */
export const noFilter: ListFilter = listFilter.parse({})

/** One page of a searched, sorted list. */
export const listQuery = z.strictObject({
  /**
   * Every word must occur in what a row shows (figures in either unit, day, outcome, remarks, events, simulated) or in number,
   * adhesive, joint type, exposure, place or note; case does not matter. A number behind "gap" or "peak" is that figure.
   */
  text: z.string().max(1000).default(''),
  status: z.enum(['all', 'waiting', 'broken', 'set-aside', 'withdrawn']).default('all'),
  filter: listFilter.default(noFilter),
  sort: z
    .enum(['number', 'adhesive', 'jointType', 'exposure', 'startedAt', 'peakN', 'strengthMPa', 'woodFailurePercent'])
    .default('number'),
  descending: z.boolean().default(false),
  offset: z.int().nonnegative().default(0),
  limit: z.int().positive().max(1000).default(200),
})
export type ListQuery = z.infer<typeof listQuery>
