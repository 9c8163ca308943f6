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
