import * as z from 'zod'

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

/** The newest entry of an archive's chain of hashes: how many there are, its hash, and when it was made (ISO 8601 UTC). */
export const chainHead = z.strictObject({
  count: z.int().positive(),
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  instant: z.string(),
})
export type ChainHead = z.infer<typeof chainHead>

/** A head that the program keeps, with the place where its archive lay then (none: an older program kept it). */
export const keptHead = chainHead.extend({ path: z.string().optional() })
export type KeptHead = z.infer<typeof keptHead>

/** The heads that the program keeps beside its settings, by the hash of each archive's first entry. */
export const keptHeadsFile = z.record(z.string(), keptHead)

/**
 * How an archive can fail to be the one whose head was kept: its chain is shorter, or has another entry at that place, or
 * another archive lay in its place.
 */
export const headFinding = z.enum(['shorter', 'different', 'other'])
export type HeadFinding = z.infer<typeof headFinding>

/** What `verify` looked at and every fault it found; sound only when faults is empty. */
export const verifyReport = z.strictObject({
  sound: z.boolean(),
  ledgerEntries: z.int(),
  breaks: z.int(),
  curves: z.int(),
  samples: z.int(),
  /** Null: the archive has no entry, or cannot be read. */
  head: chainHead.nullable(),
  faults: z.array(z.strictObject({ where: z.string(), what: z.string() })),
})
export type VerifyReport = z.infer<typeof verifyReport>
