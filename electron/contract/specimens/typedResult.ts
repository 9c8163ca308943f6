import * as z from 'zod'
import { failurePattern } from '../breaks/assessment.ts'
import { id, isoDate, isoInstant, kept, percent, positive } from '../values.ts'

/** A file of past results that was brought in. */
export const importRun = z.strictObject({
  importRunId: id,
  recordedAt: isoInstant,
  by: kept,
  fileName: kept,
  fileSha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** The mapping that its cells were read with, as JSON. */
  mapping: kept,
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

/** A person's word on a result without a curve; the newest stands. */
export const typedResultDecision = z.strictObject({
  typedResultDecisionId: id,
  typedResultId: id,
  recordedAt: isoInstant,
  by: kept,
  reason: kept,
  kind: z.enum(['set-aside', 'taken-back']),
})
export type TypedResultDecision = z.infer<typeof typedResultDecision>
