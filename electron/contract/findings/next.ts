import * as z from 'zod'
import { question } from '../procedure.ts'
import { pullSummary } from '../programme/pullProcedures.ts'
import { series } from '../programme/study.ts'
import { finite, id, isoDate, kept, positive, words } from '../values.ts'
import { findingsFilter, findingsGroup } from './procedures.ts'

const months = z.int().nonnegative()
const count = z.int().nonnegative()
const cvPercent = finite.nullable()

/** What is asked of the shelf and of the groups. */
export const nextQuestion = z.strictObject({
  filter: findingsFilter.prefault({}),
  /** The change of a series that is to be seen, percent of its start a year. */
  changePercentPerYear: positive.max(100).default(1),
  /** The difference from the reference that matters, percent of its mean. */
  marginPercent: positive.max(100).default(10),
  /** null: those that the studies name. */
  referenceAdhesive: words.nullable().default(null),
})
export type NextQuestion = z.infer<typeof nextQuestion>

/** A move of blocks from a pull to come to a later one, and the age and day at which the change is then seen; null: with none of them. */
const move = z.strictObject({
  fromMonths: months,
  toMonths: months,
  blocks: z.int().positive(),
  seenMonths: months.nullable(),
  seenOn: isoDate.nullable(),
  /** Smallest change a year that all pulls together show, as planned and with the move. */
  beforePercentPerYear: finite,
  afterPercentPerYear: finite,
})

/** What the pulls left of one series of a study can still show. */
export const shelfSeries = z.strictObject({
  ...series.shape,
  studyId: id,
  studyTitle: kept,
  gluedOn: isoDate,
  /** Blocks that wait for pulls to come, and those that are left besides. */
  waiting: count,
  free: count,
  /** Spread of single blocks that this rests on, and where it comes from; null: it is not known, and nothing can be said. */
  cvPercent,
  cvFrom: z.enum(['series', 'results', 'plan']).nullable(),
  /** What is seen after each pull to come. */
  sights: z.array(
    z.strictObject({ ageMonths: months, day: isoDate, changePercentPerYear: finite, changePercent: finite }),
  ),
  /** When the change that is asked after is seen; null: with none of the pulls. */
  seen: z.strictObject({ ageMonths: months, day: isoDate, isDone: z.boolean() }).nullable(),
  move: move.nullable(),
})
export type ShelfSeries = z.infer<typeof shelfSeries>

/** A group that is neither told from the reference nor shown to be alike, and has too few blocks for it. */
export const undecidedGroup = z.strictObject({
  group: z.string(),
  reference: z.string(),
  ageMonths: finite.nullable(),
  n: count,
  referenceN: count,
  cvPercent: finite,
  /** Blocks that each of the two needs. */
  needed: z.int().positive(),
})
export type UndecidedGroup = z.infer<typeof undecidedGroup>

/** A result that lies far out of its group and still counts. */
export const suspiciousResult = z.strictObject({
  group: z.string(),
  ageMonths: finite.nullable(),
  specimenId: id,
  breakId: id.nullable(),
  number: kept,
  strengthMPa: finite,
  meanMPa: finite,
})
export type SuspiciousResult = z.infer<typeof suspiciousResult>

/** What there is to do: now, with the shelf, with groups that are undecided, and with results that are suspicious. */
export const nextAnswer = z.strictObject({
  today: isoDate,
  /** Pulls that are due, late, soon or missed. */
  due: z.array(pullSummary),
  shelf: z.array(shelfSeries),
  /** Comparisons of a group with a reference that were made. */
  compared: count,
  undecided: z.array(undecidedGroup),
  suspicious: z.array(suspiciousResult),
  /** Groups that the lines above name by their keys. */
  groups: z.array(findingsGroup),
  /** Adhesives that others were held against. */
  references: z.array(z.string()),
  confidence: finite,
  power: finite,
  computed: count,
})
export type NextAnswer = z.infer<typeof nextAnswer>

/** What to do next, worked out in the thread of the findings. */
export const nextProcedures = {
  'findings.next': question({
    input: nextQuestion,
    output: nextAnswer,
    reads: () => ['results', 'faces', 'catalogue', 'studies', 'specimens', 'glue-ups'],
  }),
}
