import * as z from 'zod'
import { finite } from '../calibration/force.ts'

export const archiveInfo = z.strictObject({
  path: z.string(),
  formatVersion: z.int(),
  specimens: z.int(),
  breaks: z.int(),
  /** Breaks that a crash had left unfinished and that this opening recovered. */
  recovered: z.array(z.int()),
  demo: z.boolean(),
})
export type ArchiveInfo = z.infer<typeof archiveInfo>

/** What `verify` looked at and every fault it found; sound only when faults is empty. */
export const verifyReport = z.strictObject({
  sound: z.boolean(),
  ledgerEntries: z.int(),
  breaks: z.int(),
  curves: z.int(),
  samples: z.int(),
  faults: z.array(z.strictObject({ where: z.string(), what: z.string() })),
})
export type VerifyReport = z.infer<typeof verifyReport>

export const progress = z.strictObject({ task: z.string(), done: finite, total: finite })
export type Progress = z.infer<typeof progress>

/** One page of a searched, sorted list. */
export const listQuery = z.strictObject({
  /** Every word must occur in the number, adhesive, joint type, exposure, place or note; case does not matter. */
  text: z.string().max(1000).default(''),
  status: z.enum(['all', 'waiting', 'broken', 'set-aside']).default('all'),
  sort: z
    .enum(['number', 'adhesive', 'jointType', 'exposure', 'startedAt', 'peakN', 'strengthMPa', 'woodFailurePercent'])
    .default('number'),
  descending: z.boolean().default(false),
  offset: z.int().nonnegative().default(0),
  limit: z.int().positive().max(1000).default(200),
})
export type ListQuery = z.infer<typeof listQuery>
