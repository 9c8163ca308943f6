// Held by tests/shells/commands/importCommand.spec.ts.
import { createHash } from 'node:crypto'
import type { Archive } from '#archive/archive.ts'
import { correctTheValue, Trouble, troubleFrom } from '#contract/errors.ts'
import type {
  ImportedFile,
  ImportedRow,
  ImportFate,
  ImportSummary,
  ReadBlock,
} from '#contract/specimens/importedResult.ts'
import type { ImportMapping } from '#contract/specimens/importMapping.ts'
import type { Progress } from '#contract/tasks.ts'
import { importFates, importSummary } from '#exchange/import/fates.ts'
import { tableRows } from '#exchange/import/readRows.ts'
import { readSheetFile } from '#exchange/sheets/readSheetFile.ts'

/** A table as a mapping reads it, before the archive is asked. */
export type ImportTable = {
  file: ImportedFile
  mapping: ImportMapping
  rows: ImportedRow[]
  emptyRows: number
}

export type ImportOutcome = { fates: ImportFate[]; summary: ImportSummary }

/** Larger than any sheet of a million rows; the whole file lies in memory while it is read. */
const mostFileBytes = 200_000_000

/** Throws the trouble "not-readable" for a file that is larger. */
export function refuseLargeFile(file: string, bytes: number): void {
  if (bytes > mostFileBytes)
    throw new Trouble('not-readable', `${file}: the file is larger than 200 MB.`, 'Divide it into several.')
}

/** A mapping from the text of a file. Throws Trouble `invalid-input` that says what does not fit. */
export function mappingFrom<Mapping>(file: string, text: string, schema: { parse(read: unknown): Mapping }): Mapping {
  try {
    return schema.parse(JSON.parse(text))
  } catch (thrown) {
    throw new Trouble('invalid-input', `${file}: ${troubleFrom(thrown).message}`, correctTheValue)
  }
}

/** Reads all blocks of a file. Rejects with a Trouble where the file cannot be read, or the mapping does not fit it. */
export async function readImportTable(
  fileName: string,
  bytes: Buffer,
  mapping: ImportMapping,
  signal?: AbortSignal,
): Promise<ImportTable> {
  refuseLargeFile(fileName, bytes.length)
  const { sheet: name = null, delimiter = null, encoding = null, headerRow } = mapping
  const { sheet } = await readSheetFile(fileName, bytes, { sheet: name, delimiter, encoding, headerRow }, signal)
  const { rows, emptyRows } = tableRows(sheet, mapping)
  const read: ImportedRow[] = []
  for (const row of rows) {
    read.push(row)
    // Reading a million cells must not keep a capture waiting for its turn
    if (read.length % 2000 === 0) {
      await new Promise((resolve) => setImmediate(resolve))
      signal?.throwIfAborted()
    }
  }
  const fileSha256 = createHash('sha256').update(bytes).digest('hex')
  const file = { fileName, fileSha256, sheet: sheet.name }
  return { file, mapping: sheet.name === null ? mapping : { ...mapping, sheet: sheet.name }, rows: read, emptyRows }
}

/** What an import would come to; nothing is stored. */
export async function tryImport(archive: Pick<Archive, 'judgeImport'>, table: ImportTable): Promise<ImportOutcome> {
  const judged = await archive.judgeImport(table.file, readBlocks(table))
  return outcomeOf(table, importFates(table.rows, judged, true), true)
}

/** Brings the new blocks of a table in: all of them, or none where it is stopped or fails. */
export async function runImport(
  archive: Pick<Archive, 'storeImport'>,
  table: ImportTable,
  said: { recordedAt: string; by: string; demo: boolean },
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<ImportOutcome> {
  const { file, mapping } = table
  const made = { file, mapping: JSON.parse(JSON.stringify(mapping)), blocks: readBlocks(table), ...said }
  const judged = await archive.storeImport(onProgress, signal, made)
  return outcomeOf(table, importFates(table.rows, judged, false), false)
}

function readBlocks({ rows }: ImportTable): ReadBlock[] {
  return rows.filter((row) => row.outcome === 'read')
}

function outcomeOf({ file, emptyRows }: ImportTable, fates: ImportFate[], dryRun: boolean): ImportOutcome {
  return { fates, summary: importSummary(fates, { emptyRows, fileSha256: file.fileSha256 }, dryRun) }
}
