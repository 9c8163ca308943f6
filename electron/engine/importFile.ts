// Held by tests/shells/commands/importCommand.spec.ts.
import { createReadStream, existsSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { Archive } from '#archive/archive.ts'
import { type ImportMapping, importMapping } from '#contract/specimens/importMapping.ts'
import { importStopped } from '#contract/specimens/importProcedures.ts'
import type { SheetView } from '#contract/specimens/sheetView.ts'
import type { Progress } from '#contract/tasks.ts'
import { lookAtSheet } from '#exchange/import/lookAtSheet.ts'
import { readSheetFile } from '#exchange/sheets/readSheetFile.ts'
import { inTemporaryFolder } from '#exchange/temporaryFolder.ts'
import { unreadableFile } from '#exchange/unreadableFile.ts'
import { readArchive } from './core/readArchive.ts'
import { openOwnArchive } from './core/realParts.ts'
import { watchChain } from './keeping/watchChain.ts'
import {
  type ImportOutcome,
  mappingFrom,
  readImportTable,
  refuseLargeFile,
  runImport,
  tryImport,
} from './specimens/importTable.ts'

/** An import without an engine: the file, its mapping, the archive, and who brings it in (null: the name in the archive's settings). */
export type FileImport = { file: string; mapFile: string; archive: string; by: string | null; dryRun: boolean }

/** Who it was where neither the command nor the archive names a person. */
export const nobodyNamed = 'command line'

/** The mapping that the headings of a file suggest. Rejects with a Trouble that names the file. */
export async function proposeImport(file: string): Promise<{ mapping: ImportMapping; fills: CountedFill[] }> {
  const said = { sheet: null, delimiter: null, encoding: null, headerRow: 1 }
  const read = await readSheetFile(basename(file), await bytesOf(file), said)
  const { proposed, columns } = await lookAtSheet(read, null, '')
  return { mapping: proposed, fills: fillsOf(columns) }
}

type CountedFill = { fill: string; count: number }

/** The colours of cells in all columns, the commonest first. */
function fillsOf(columns: SheetView['columns']): CountedFill[] {
  const counts = new Map<string, number>()
  for (const { fills } of columns)
    for (const { fill, count } of fills) if (fill !== null) counts.set(fill, (counts.get(fill) ?? 0) + count)
  return [...counts].map(([fill, count]) => ({ fill, count })).sort((one, other) => other.count - one.count)
}

/**
 * Brings a table of past results into an archive, which is made where there is none; in a dry run nothing is stored or made.
 * Rejects with the Trouble of reading or storing, `cancelled` when it was stopped.
 */
export async function importFile(
  asked: FileImport,
  program: string,
  keptHeads: string,
  onProgress: (progress: Progress) => void,
  signal: AbortSignal,
): Promise<ImportOutcome> {
  const mapping = mappingFrom(asked.mapFile, (await bytesOf(asked.mapFile)).toString('utf8'), importMapping)
  const table = await readImportTable(basename(asked.file), await bytesOf(asked.file), mapping, signal).catch(
    stoppedInWords(signal),
  )
  if (asked.dryRun) return await trying(asked.archive, program, (archive) => tryImport(archive, table))
  const archive = await openOwnArchive(asked.archive, program)
  try {
    const watch = await watchChain(archive, keptHeads)
    const { operator } = await archive.preferences()
    const by = asked.by ?? (operator === '' ? nobodyNamed : operator)
    const said = { recordedAt: new Date().toISOString(), by, demo: false }
    const outcome = await runImport(archive, table, said, onProgress, signal)
    await watch.close()
    return outcome
  } finally {
    await archive.close()
  }
}

/** For a file whose reading was stopped: rejects with the Trouble that says so, and as it did where it failed otherwise. */
export const stoppedInWords = (signal: AbortSignal) => (thrown: unknown) => {
  throw signal.aborted ? importStopped() : thrown
}

/** Asks the archive; where there is none, an empty one that is gone afterwards. */
export async function trying<T>(path: string, program: string, ask: (archive: Archive) => Promise<T>): Promise<T> {
  if (existsSync(path)) return await readArchive(path, program, ask)
  return inTemporaryFolder('breakledger-dry-run-', async (folder) => {
    const archive = await openOwnArchive(join(folder, 'empty.breakledger'), program)
    try {
      return await ask(archive)
    } finally {
      await archive.close()
    }
  })
}

/** All bytes of a file or a pipe. Rejects with a Trouble that names it; no more is read than a file may have, for a device has no end. */
export async function bytesOf(file: string): Promise<Buffer> {
  const pieces: Buffer[] = []
  let bytes = 0
  try {
    for await (const piece of createReadStream(file, { highWaterMark: 1 << 20 }) as AsyncIterable<Buffer>) {
      bytes += piece.length
      refuseLargeFile(file, bytes)
      pieces.push(piece)
    }
  } catch (thrown) {
    throw unreadableFile(file, thrown)
  }
  return Buffer.concat(pieces)
}
