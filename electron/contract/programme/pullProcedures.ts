import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { deed, question } from '../procedure.ts'
import { signature } from '../signature.ts'
import { type Topic, topicsOf } from '../topics.ts'
import { finite, id, isoDate, kept } from '../values.ts'
import { pullDecision, pullName } from './pull.ts'
import { series } from './study.ts'

const count = z.int().nonnegative()

/** planned: far off. soon: its window opens within a month. due, late: its window is open, the day to come or past. missed: it closed over blocks that wait. */
export const pullState = z.enum(['planned', 'soon', 'due', 'late', 'missed', 'done', 'skipped'])
export type PullState = z.infer<typeof pullState>

/** Blocks of a pull: all of them, those that wait on the shelf, those that have a result, and those that are lost. */
export const pullBlocks = z.strictObject({ planned: count, waiting: count, broken: count, lost: count })
export type PullBlocks = z.infer<typeof pullBlocks>

/** A pull as it stands on a day. */
export const pullSummary = z.strictObject({
  ...pullName.shape,
  /** Whatever is decided about it, it keeps this key, which no other pull of the archive has. */
  key: z.string(),
  /** Rises whenever something is decided about it, or its study or a glue-up of it is changed; it never falls. */
  sequence: count,
  studyTitle: kept,
  demo: z.boolean(),
  /** The day by its age alone, and the day as it stands. */
  plannedOn: isoDate,
  dueOn: isoDate,
  windowDays: count,
  state: pullState,
  /** The plan did not have it: it takes spares. */
  added: z.boolean(),
  blocks: pullBlocks,
  /** The newest word on it. */
  decision: pullDecision.nullable(),
})
export type PullSummary = z.infer<typeof pullSummary>

/** Blocks of a pull that were made alike and lie in one place. */
export const pullGroup = z.strictObject({
  ...series.shape,
  gapMm: series.shape.gapMm.nullable(),
  /** '': nobody wrote it down, or they are not glued yet. */
  place: kept,
  blocks: z.int().positive(),
})
export type PullGroup = z.infer<typeof pullGroup>

/** So many pulls are asked after at once. */
export const mostPullsAsked = 1000

const percent = finite.nonnegative().nullable()

/** What lost blocks and closed pulls mean for the ages of a series that are still open. */
export const seriesStock = z.strictObject({
  ...series.shape,
  gluedOn: isoDate,
  /** Spares, and blocks of closed pulls, that are left when all shortages are filled. */
  free: count,
  ages: z.array(
    z.strictObject({
      ageMonths: count,
      planned: count,
      atHand: count,
      filled: count,
      blocks: count,
      detectableAsPlannedPercent: percent,
      detectablePercent: percent,
    }),
  ),
})
export type SeriesStock = z.infer<typeof seriesStock>

const ofStudy = z.strictObject({ studyId: id })
const pullsRead = (studyId: number | null): Topic[] => [
  ...(studyId === null ? (['studies'] as const) : topicsOf('study', [studyId])),
  'specimens',
  'glue-ups',
]

/** Pulls: when blocks leave the store, what is decided about it, and what is left on the shelf. */
export const pullProcedures = {
  /**
   * Of one study, or of all, by day; `today` is the day on which they stand so. `filling`: the demo is being filled, and none is
   * listed before that is over, for what lies behind is still to be broken.
   */
  'pulls.list': question({
    input: z.strictObject({ studyId: id.nullable() }),
    output: z.strictObject({
      today: isoDate,
      pulls: z.array(pullSummary),
      filling: z.boolean(),
      unreadable: unreadableRecords,
    }),
    reads: ({ studyId }) => pullsRead(studyId),
  }),
  /** What is to be taken from the shelf for each of some pulls, in their order: the blocks that wait, or before any is glued the planned ones. */
  'pulls.blocks': question({
    input: z.strictObject({ pulls: z.array(pullName).max(mostPullsAsked) }),
    output: z.array(z.array(pullGroup)),
    reads: () => [...pullsRead(null), 'catalogue'],
  }),
  'pulls.stock': question({ input: ofStudy, output: z.array(seriesStock), reads: ({ studyId }) => pullsRead(studyId) }),
  'pulls.decide': deed({
    input: z.strictObject({
      ...pullName.shape,
      kind: pullDecision.shape.kind,
      dueOn: isoDate.nullable(),
      blocksPerSeries: z.int().positive().max(1000).nullable(),
      ...signature.shape,
    }),
    output: pullDecision,
  }),
  /** The pulls of a study as a calendar file (RFC 5545). */
  'pulls.calendar': deed({ input: ofStudy, output: z.strictObject({ events: count, text: z.string() }) }),
}
