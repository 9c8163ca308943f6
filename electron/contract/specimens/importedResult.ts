import * as z from 'zod'
import { failurePattern } from '../breaks/assessment.ts'
import { finite, id, isoDate, note, percent, positive, words } from '../values.ts'
import { importField } from './importMapping.ts'

/** What a table says of one block, in the units of the archive; null, or an empty text: nothing. */
export const importedValues = z.strictObject({
  number: words.min(1).nullable(),
  adhesive: words,
  lot: words,
  wood: words,
  jointType: words,
  exposure: words,
  board: words,
  place: words,
  bondLineGapMm: finite.nonnegative().nullable(),
  overlapLengthMm: positive.nullable(),
  overlapWidthMm: positive.nullable(),
  areaMm2: positive.nullable(),
  peakN: positive.nullable(),
  strengthMPa: positive.nullable(),
  woodFailurePercent: percent.nullable(),
  failurePattern: failurePattern.nullable(),
  gluedOn: isoDate.nullable(),
  brokenOn: isoDate.nullable(),
  ageMonths: finite.nonnegative().nullable(),
  note,
})
export type ImportedValues = z.infer<typeof importedValues>

/** Where in a sheet a block stands: the row that a sheet program shows, and the column where a row holds several. */
export const sheetPlace = z.strictObject({ row: z.int().positive(), column: z.string().nullable() })

/** A block that could be read, with what is to be said of how it was read; or one that could not, with the reason. */
export const importedRow = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('read'),
    ...sheetPlace.shape,
    values: importedValues,
    remarks: z.array(z.string()),
  }),
  z.strictObject({
    outcome: z.literal('rejected'),
    ...sheetPlace.shape,
    number: z.string().nullable(),
    reason: z.string(),
  }),
])
export type ImportedRow = z.infer<typeof importedRow>

/** What became of a block of a table, or would become of it. */
export const importFate = z.strictObject({
  ...sheetPlace.shape,
  fate: z.enum(['new', 'already-there', 'rejected']),
  reason: z.string().nullable(),
  number: z.string().nullable(),
  specimenId: id.nullable(),
})
export type ImportFate = z.infer<typeof importFate>

/** What an import came to. */
export const importSummary = z.strictObject({
  new: z.int().nonnegative(),
  alreadyThere: z.int().nonnegative(),
  rejected: z.int().nonnegative(),
  emptyRows: z.int().nonnegative(),
  fileSha256: z.string(),
  dryRun: z.boolean(),
})
export type ImportSummary = z.infer<typeof importSummary>

/** Why a block that could be read is not new; where a file is named, it is the one that it came from before. */
export const fateCause = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('same-number') }),
  z.strictObject({ kind: z.literal('other-value'), field: importField }),
  z.strictObject({ kind: z.literal('other-result') }),
  z.strictObject({ kind: z.literal('number-twice'), row: z.int().positive(), same: z.boolean() }),
  z.strictObject({ kind: z.literal('same-place') }),
  z.strictObject({ kind: z.literal('set-aside') }),
  z.strictObject({ kind: z.literal('grown'), fileName: z.string() }),
  z.strictObject({ kind: z.literal('changed'), fileName: z.string() }),
])
export type FateCause = z.infer<typeof fateCause>

/** What the archive makes of a block that could be read. */
export const judgedBlock = z.strictObject({
  fate: importFate.shape.fate,
  cause: fateCause.nullable(),
  /** As it is written on the block; null where it is new and gets a number of ours when it is stored. */
  number: z.string().nullable(),
  specimenId: id.nullable(),
})
export type JudgedBlock = z.infer<typeof judgedBlock>

/** The file that blocks come from; `sheet` null: it is one table. */
export const importedFile = z.strictObject({
  fileName: z.string(),
  fileSha256: z.string().regex(/^[0-9a-f]{64}$/),
  sheet: z.string().nullable(),
})
export type ImportedFile = z.infer<typeof importedFile>

/** A block that could be read, with its place. */
export type ReadBlock = Extract<ImportedRow, { outcome: 'read' }>
