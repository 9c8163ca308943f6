import * as z from 'zod'
import { isoInstant, place } from '../values.ts'

/** A person's own archive, or the one of the demo beside it. */
export const archiveKind = z.enum(['own', 'demo'])
export type ArchiveKind = z.infer<typeof archiveKind>

/** Which archive to open: the demo, the person's own that was open last, or a file; `make`: a new one. */
export const archiveChoice = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('demo') }),
  z.strictObject({ kind: z.literal('own') }),
  z.strictObject({ kind: z.literal('file'), path: place, make: z.boolean() }),
])
export type ArchiveChoice = z.infer<typeof archiveChoice>

/** What a file is chosen for: one that is there, or a new one. */
export const filePurpose = z.enum(['open', 'make'])
export type FilePurpose = z.infer<typeof filePurpose>

/** An archive that can be opened without naming its file. */
export const knownArchive = z.strictObject({
  path: z.string(),
  kind: archiveKind,
  /** Lies where archives lie that were never named. */
  isUsual: z.boolean(),
  isOpen: z.boolean(),
  isThere: z.boolean(),
  openedAt: isoInstant.nullable(),
})
export type KnownArchive = z.infer<typeof knownArchive>

/** The archives that were opened, as the program remembers them beside its settings, newest first. */
export const openedArchivesFile = z.array(z.strictObject({ path: z.string(), openedAt: isoInstant }))
export type OpenedArchive = z.infer<typeof openedArchivesFile>[number]

export const archiveInfo = z.strictObject({
  path: z.string(),
  formatVersion: z.int(),
  specimens: z.int(),
  breaks: z.int(),
  /** How many of these nobody measured. */
  simulated: z.int(),
  /** Breaks that a crash had left unfinished and that this opening recovered. */
  recovered: z.array(z.int()),
  /** Holds specimens of the demo study. */
  demo: z.boolean(),
  /** Holds something that was not invented: a person's own specimen, or a break of a real device that is of no specimen of the demo study. */
  own: z.boolean(),
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
