import * as z from 'zod'
import { benchState } from '../bench/bench.ts'
import { breakSummary } from '../breaks/break.ts'
import { curveEventKind } from '../breaks/evaluation.ts'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { deed, question } from '../procedure.ts'
import { specimenSummary } from '../specimens/specimenRecord.ts'
import { topicsOf } from '../topics.ts'
import { finite, id, isoInstant, kept, note, nothing, words } from '../values.ts'
import { breakingSession } from './breakingSession.ts'
import { pullName } from './pull.ts'
import { ageMonths } from './study.ts'

/** How far a session is. */
const breakingRow = z.strictObject({
  ...breakingSession.shape,
  endedAt: isoInstant.nullable(),
  broken: z.int().nonnegative(),
  /** Passed over, and not broken after all. */
  skipped: z.int().nonnegative(),
  withdrawn: z.int().nonnegative(),
})
export type BreakingRow = z.infer<typeof breakingRow>

const memberState = z.enum(['waiting', 'broken', 'skipped', 'withdrawn'])
export type MemberState = z.infer<typeof memberState>

/** A specimen of a session, with what became of it there. */
const breakingMember = z.strictObject({
  specimen: specimenSummary,
  studyId: id.nullable(),
  ageMonths: ageMonths.nullable(),
  state: memberState,
  /** What was said when it was passed over; null: it was not, or it was broken after all. */
  skipped: z.strictObject({ recordedAt: isoInstant, by: kept, note: kept }).nullable(),
  /** Its breaks since the session began, newest last. */
  breaks: z.array(
    z.strictObject({
      summary: breakSummary,
      events: z.array(z.strictObject({ kind: curveEventKind, percentOfPeak: finite.nullable() })),
    }),
  ),
  /** Spares of its series that wait on the shelf. */
  spares: z.int().nonnegative(),
})
export type BreakingMember = z.infer<typeof breakingMember>

export const breakingRecord = z.strictObject({
  ...breakingRow.shape,
  /** In the order in which they are to be broken. */
  members: z.array(breakingMember),
  unreadable: unreadableRecords,
})
export type BreakingRecord = z.infer<typeof breakingRecord>

const ofSession = z.strictObject({ breakingSessionId: id })
const signed = { note: note.default(''), by: words }

/** Breaking sessions: what can be broken, and a queue of it at the bench until the session is ended. */
export const breakingProcedures = {
  'breaking.list': question({ input: nothing, output: z.array(breakingRow), reads: () => ['breakings', 'specimens'] }),
  'breaking.get': question({
    input: ofSession,
    output: breakingRecord,
    reads: ({ breakingSessionId }) => [...topicsOf('breaking', [breakingSessionId]), 'specimens', 'breaks'],
  }),
  /**
   * Begins a session and puts its first specimen on the bench. Blocks of the pulls come in their kept random order; the
   * specimens named besides come after them, those of no study in an order that is drawn and kept. A session that is still
   * open, and a specimen that broke, was withdrawn or is unknown, is a conflict.
   */
  'breaking.begin': deed({
    input: z.strictObject({
      title: words,
      pulls: z.array(pullName).max(500),
      specimenIds: z.array(id).max(5000),
      by: words,
    }),
    output: breakingRow,
  }),
  /** Passes over the specimen at hand or any other of the open session, and goes on. */
  'breaking.skip': deed({ input: z.strictObject({ specimenId: id, ...signed }), output: benchState }),
  'breaking.end': deed({ input: z.strictObject({ ...ofSession.shape, ...signed }), output: breakingRow }),
  /** Opens a session again that was ended too early. */
  'breaking.reopen': deed({ input: z.strictObject({ ...ofSession.shape, ...signed }), output: breakingRow }),
}
