import * as z from 'zod'
import { unreadableRecords } from '../keeping/unreadable.ts'
import { id, isoDate, isoInstant, kept, positive } from '../values.ts'
import { ageMonths, series, study } from './study.ts'

const count = z.int().nonnegative()

/**
 * What became of allocated blocks: each is not glued yet, waits on the shelf, has a result, or is lost (withdrawn, or broken
 * without a result).
 */
export const blockCounts = z.strictObject({
  allocated: count,
  glued: count,
  waiting: count,
  broken: count,
  lost: count,
})
export type BlockCounts = z.infer<typeof blockCounts>

/** The allocated blocks of a cell; `ageMonths` null: the spares of a series. */
export const cellCounts = z.strictObject({ ...series.shape, ageMonths: ageMonths.nullable(), ...blockCounts.shape })
export type CellCounts = z.infer<typeof cellCounts>

/** A study as lists show it. */
export const studySummary = z.strictObject({ ...study.shape, counts: blockCounts })
export type StudySummary = z.infer<typeof studySummary>

/** A study with all its versions and what became of its blocks. */
export const studyRecord = z.strictObject({
  current: study,
  /** Oldest first. */
  revisions: z.array(study),
  counts: blockCounts,
  cells: z.array(cellCounts),
  /** How many blocks are cut from each board. */
  boards: z.array(z.strictObject({ board: z.string(), blocks: count })),
  /** Its short numbers without check digits; null: no block is allocated. */
  runnings: z.strictObject({ first: z.int(), last: z.int() }).nullable(),
  /** The days on which its blocks were glued, and the sessions in which pulls of it were broken, oldest first. */
  glueUps: z.array(z.strictObject({ glueUpId: id, gluedOn: isoDate, blocks: count })),
  sessions: z.array(z.strictObject({ breakingSessionId: id, title: kept, startedAt: isoInstant })),
  unreadable: unreadableRecords,
})
export type StudyRecord = z.infer<typeof studyRecord>

/** What came of an allocation: how many blocks are new, and their short numbers without check digits. */
export const allocationDone = z.strictObject({ blocks: z.int().positive(), first: z.int(), last: z.int() })
export type AllocationDone = z.infer<typeof allocationDone>

/** Spread within the groups of an archive, pooled, in percent of their means. */
export const archiveVariation = z.strictObject({ cvPercent: positive, groups: count, blocks: count })
export type ArchiveVariation = z.infer<typeof archiveVariation>
