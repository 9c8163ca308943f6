import type Database from 'better-sqlite3'
import { keepLabel, nextOwnNumbers } from '#archive/programme/ownNumbers.ts'
import { type NewImport, storeImport } from '#archive/specimens/import/storeImport.ts'
import type { ImportedFile, ImportedValues, JudgedBlock, ReadBlock } from '#contract/specimens/importedResult.ts'
import { morning } from './storedStudy.ts'

// Past results of the invented boatyard school, as a table gives them.

export const file: ImportedFile = { fileName: 'blocks.csv', fileSha256: 'a'.repeat(64), sheet: null }
/** The same sheet, saved again. */
export const savedAgain: ImportedFile = { ...file, fileName: 'blocks 2.csv', fileSha256: 'b'.repeat(64) }

/** A block as it was read from a row. */
export function readBlock(row: number, values: Partial<ImportedValues> = {}, column: string | null = null): ReadBlock {
  return {
    outcome: 'read',
    row,
    column,
    remarks: [],
    values: {
      ...{ number: null, adhesive: 'casein C1', lot: '', wood: 'beech', jointType: '', exposure: 'loft', board: '' },
      ...{ place: '', bondLineGapMm: null, overlapLengthMm: null, overlapWidthMm: null, areaMm2: 600, peakN: 5000 },
      ...{ strengthMPa: null, woodFailurePercent: null, failurePattern: null, gluedOn: null, brokenOn: null },
      ...{ ageMonths: null, note: '' },
      ...values,
    },
  }
}

/** Brings blocks in. */
export function importBlocks(
  database: Database.Database,
  blocks: readonly ReadBlock[],
  change: Partial<NewImport> = {},
  isCancelled = () => false,
): JudgedBlock[] {
  const mapping = { layout: 'row-per-specimen', sheet: change.file?.sheet ?? null }
  const made = { file, mapping, blocks, recordedAt: morning, by: 'Ada Thole', demo: false, ...change }
  return storeImport(database, { next: nextOwnNumbers, keep: keepLabel }, made, () => {}, isCancelled)
}
