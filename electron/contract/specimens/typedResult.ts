import * as z from 'zod'
import { failurePattern } from '../breaks/assessment.ts'
import { signature } from '../signature.ts'
import { id, isoDate, isoInstant, kept, note, percent, positive, words } from '../values.ts'

/** A file of past results that was brought in. */
export const importRun = z.strictObject({
  importRunId: id,
  recordedAt: isoInstant,
  by: kept,
  fileName: kept,
  fileSha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** The mapping that its cells were read with, as the program of that day knew it. */
  mapping: z.record(z.string(), z.json()),
})
export type ImportRun = z.infer<typeof importRun>

/** A result without a curve: a peak alone, typed from a dial or brought in from a file. Force in N, strength in MPa. */
export const typedResult = z.strictObject({
  typedResultId: id,
  recordedAt: isoInstant,
  by: kept,
  specimenId: id,
  source: z.enum(['import', 'dial']),
  importRunId: id.nullable(),
  /** Where in the file it stands, as a sheet program counts. */
  row: z.int().positive().nullable(),
  column: kept.nullable(),
  /** null: only the strength is known. */
  peakN: positive.nullable(),
  /** As it was given; null: it follows from load and area. */
  strengthMPa: positive.nullable(),
  woodFailurePercent: percent.nullable(),
  failurePattern: failurePattern.nullable(),
  brokenOn: isoDate.nullable(),
  /** As it was given; null: it follows from the two days. */
  ageMonths: positive.or(z.literal(0)).nullable(),
  /** Smallest step of the dial. */
  resolutionN: positive.nullable(),
  readBy: kept,
  note: kept,
})
export type TypedResult = z.infer<typeof typedResult>

/** Why a result without a curve is set aside: it is not of this block, which was perhaps never broken; or another reason. */
export const typedSetAsideCause = z.enum(['wrong-block', 'other'])
export type TypedSetAsideCause = z.infer<typeof typedSetAsideCause>

/**
 * A result without a curve as pages show it: with the strength that follows from load and area where both are known, the file
 * that it came from, and who set it aside.
 */
export const typedResultSummary = z.strictObject({
  ...typedResult.shape,
  file: z.strictObject({ fileName: kept, fileSha256: kept }).nullable(),
  setAside: z
    .strictObject({ by: kept, reason: kept, recordedAt: isoInstant, cause: typedSetAsideCause.nullable() })
    .nullable(),
})
export type TypedResultSummary = z.infer<typeof typedResultSummary>

/** A reading of a dial, as it is typed for a specimen. */
export const dialReading = z.strictObject({
  specimenId: id,
  peakN: positive,
  woodFailurePercent: percent.nullable().default(null),
  failurePattern: failurePattern.nullable().default(null),
  brokenOn: isoDate.nullable().default(null),
  resolutionN: positive.nullable().default(null),
  readBy: words.default(''),
  note: note.default(''),
})
export type DialReading = z.infer<typeof dialReading>

/** A file that was brought in, with how many of its results count and how many there are. */
export const importRunSummary = z.strictObject({
  ...importRun.shape,
  results: z.int().nonnegative(),
  inUse: z.int().nonnegative(),
})
export type ImportRunSummary = z.infer<typeof importRunSummary>

/** What a person may say of a result without a curve, with who and why; `cause` null: it was not asked. */
export const typedResultWord = z.strictObject({
  kind: z.enum(['set-aside', 'taken-back']),
  cause: typedSetAsideCause.nullable().default(null),
  ...signature.shape,
})
export type TypedResultWord = z.input<typeof typedResultWord>

/** A person's word on a result without a curve; the newest stands. */
export const typedResultDecision = z
  .strictObject({
    ...typedResultWord.shape,
    typedResultDecisionId: id,
    typedResultId: id,
    recordedAt: isoInstant,
    by: kept,
    reason: kept,
  })
  .refine(({ kind, cause }) => kind === 'set-aside' || cause === null, {
    path: ['cause'],
    error: 'a cause belongs to a result that is set aside',
  })
export type TypedResultDecision = z.infer<typeof typedResultDecision>
