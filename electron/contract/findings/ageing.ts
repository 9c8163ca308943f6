import * as z from 'zod'
import { question } from '../procedure.ts'
import { finite, positive } from '../values.ts'
import { findingsOptions } from './options.ts'
import { findingsFilter } from './procedures.ts'

const known = finite.nullable()

/** What is asked of the results over their ages. */
export const ageingQuestion = z.strictObject({
  options: findingsOptions.prefault({}),
  filter: findingsFilter.prefault({}),
  /** The chance is asked that a mean has fallen below this share of the first one, percent, at that age; null: when the programme ends. */
  sharePercent: positive.lt(100).default(80),
  atMonths: positive.max(1200).nullable().default(null),
})
export type AgeingQuestion = z.infer<typeof ageingQuestion>

/** One series: the ages at which it was broken, its line to the end of the programme, and the chance of a share at an age. */
export const seriesAhead = z.strictObject({
  group: z.string(),
  agesMonths: z.array(finite),
  /** The last age that any study plans for it, and not before the last one seen. */
  endMonths: finite,
  /** null: fewer than four ages, or no model fits. */
  curve: z.array(z.strictObject({ ageMonths: finite, meanMPa: finite, lowMPa: finite, highMPa: finite })).nullable(),
  /** The chance weighed over the models that are not ruled out, and by the one that makes it least and most likely. */
  below: z
    .strictObject({ ageMonths: finite, sharePercent: finite, probability: finite, least: finite, most: finite })
    .nullable(),
})
export type SeriesAhead = z.infer<typeof seriesAhead>

/** Slopes of all series together; percent a year of their own strength. */
export const slopesTogether = z.strictObject({
  commonPercentPerYear: finite,
  commonLowPercentPerYear: finite,
  commonHighPercentPerYear: finite,
  spreadPercentPerYear: finite,
  blockSdPercent: finite,
  series: z.array(
    z.strictObject({
      group: z.string(),
      ownPercentPerYear: finite,
      /** Helped by the others. */
      percentPerYear: finite,
      lowPercentPerYear: finite,
      highPercentPerYear: finite,
      shrinkage: finite,
    }),
  ),
})

/** What the boards do at one age, where groups share boards. */
export const boardsAtAge = z.strictObject({
  ageMonths: known,
  boards: z.int(),
  boardSdMPa: finite,
  blockSdMPa: finite,
  boardShare: finite,
  p: finite,
  groups: z.array(z.strictObject({ group: z.string(), plainMPa: finite, meanMPa: finite, standardErrorMPa: finite })),
})
export type BoardsAtAge = z.infer<typeof boardsAtAge>

/** Results over their ages: each series, all of them together, and what the boards do. */
export const ageingAnswer = z.strictObject({
  series: z.array(z.strictObject({ ...seriesAhead.shape, upcomingMonths: z.array(finite) })),
  /** null: fewer than three series of two ages. */
  together: slopesTogether.nullable(),
  boards: z.array(boardsAtAge),
  computed: z.int().nonnegative(),
})
export type AgeingAnswer = z.infer<typeof ageingAnswer>

/** Results over their ages, worked out in the thread of the findings. */
export const ageingProcedures = {
  'findings.ageing': question({
    input: ageingQuestion,
    output: ageingAnswer,
    reads: () => ['results', 'faces', 'catalogue', 'studies', 'glue-ups'],
  }),
}
