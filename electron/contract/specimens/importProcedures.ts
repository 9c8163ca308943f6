// Held by tests/engine/specimens/importHandlers.spec.ts.
import * as z from 'zod'
import { Trouble } from '../errors.ts'
import { deed, question } from '../procedure.ts'
import { id, nothing, words } from '../values.ts'
import { importFate, importSummary } from './importedResult.ts'
import { delimiter, importMapping, textEncoding } from './importMapping.ts'
import { sheetView } from './sheetView.ts'
import { importRunSummary, typedResultWord } from './typedResult.ts'

/** The largest file that a page may send, in bytes; the command line takes larger ones. */
export const largestTableBytes = 30_000_000

/** Throws the trouble "invalid-input" for a file that is larger; asked before it is sent, and again where it arrives. */
export function refuseLargeTable(name: string, bytes: number): void {
  if (bytes > largestTableBytes)
    throw new Trouble(
      'invalid-input',
      `"${name}" has ${(bytes / 1e6).toFixed(1)} MB; from here a table may have ${largestTableBytes / 1e6} MB.`,
      'Divide it, or bring it in with the command "breakledger import".',
    )
}

/** What is said of an import that was stopped, wherever it was. */
export function importStopped(): Trouble {
  return new Trouble('cancelled', 'The import was stopped; nothing of it was stored.', 'Import again when it suits.')
}

/** A file as it lies on the disk of whoever brings it. */
const tableFile = z.strictObject({ name: words.min(1), content: z.instanceof(Uint8Array) })

/** More fates are not listed one by one; all of them are counted. */
export const mostFatesListed = 50_000

/** What an import came to, or would come to, with the fates from the top of the table. */
const outcome = z.strictObject({ summary: importSummary, fates: z.array(importFate) })
export type ImportAnswer = z.infer<typeof outcome>

/** Tables of past results: looked at, tried and brought in, under the task "import". */
export const importProcedures = {
  /** Reads one sheet of a file and proposes a mapping. What is null is found from the file. */
  'imports.look': question({
    input: tableFile.extend({
      sheet: z.string().max(200).nullable(),
      headerRow: z.int().min(0).max(10_000).nullable(),
      delimiter: delimiter.nullable(),
      encoding: textEncoding.nullable(),
    }),
    output: sheetView,
    reads: () => [],
  }),
  /** Says what would become of every block; nothing is stored. */
  'imports.try': question({
    input: tableFile.extend({ mapping: importMapping }),
    output: outcome,
    reads: () => ['imports', 'specimens'],
  }),
  /** Brings the new blocks in: all of them, or none where it is stopped. */
  'imports.run': deed({ input: tableFile.extend({ mapping: importMapping, by: words.min(1) }), output: outcome }),
  /** The files of past results that were brought in, newest first. */
  'imports.list': question({
    input: nothing,
    output: z.array(importRunSummary),
    reads: () => ['imports', 'specimens'],
  }),
  /** Sets every result of an import aside, or lets them count again; says how many. */
  'imports.decide': deed({
    input: z.strictObject({ importRunId: id, ...typedResultWord.shape }),
    output: z.int().nonnegative(),
  }),
}
