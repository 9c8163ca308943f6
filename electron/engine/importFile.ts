// Held by tests/shells/commands/importCommand.spec.ts.
import { existsSync } from 'node:fs'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import type { Archive } from '#archive/archive.ts'
import { Trouble } from '#contract/errors.ts'
import { importMapping } from '#contract/specimens/importMapping.ts'
import type { Progress } from '#contract/tasks.ts'
import { readArchive } from './core/readArchive.ts'
import { openOwnArchive } from './core/realParts.ts'
import { watchChain } from './keeping/watchChain.ts'
import { type ImportOutcome, mappingFrom, readImportTable, runImport, tryImport } from './specimens/importTable.ts'

/** An import without an engine: the file, its mapping, the archive, and who brings it in (null: the name in the archive's settings). */
export type FileImport = { file: string; mapFile: string; archive: string; by: string | null; dryRun: boolean }

/** Who it was where neither the command nor the archive names a person. */
export const nobodyNamed = 'command line'

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
  const table = await readImportTable(basename(asked.file), await bytesOf(asked.file), mapping, signal)
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

/** Asks the archive; where there is none, an empty one that is gone afterwards. */
export async function trying<T>(path: string, program: string, ask: (archive: Archive) => Promise<T>): Promise<T> {
  if (existsSync(path)) return await readArchive(path, program, ask)
  const folder = await mkdtemp(join(tmpdir(), 'breakledger-dry-run-'))
  try {
    const archive = await openOwnArchive(join(folder, 'empty.breakledger'), program)
    try {
      return await ask(archive)
    } finally {
      await archive.close()
    }
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

/** All bytes of a file. Rejects with a Trouble that names it. */
export async function bytesOf(file: string): Promise<Buffer> {
  try {
    return await readFile(file)
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? thrown.code : ''
    if (code === 'ENOENT')
      throw new Trouble('not-found', `${file}: no file lies there.`, 'Check the path and its name.')
    throw new Trouble(
      'not-readable',
      `${file}: the file cannot be read (${thrown instanceof Error ? thrown.message : String(thrown)}).`,
      'Check that it is a file, and that this user may read it.',
    )
  }
}
