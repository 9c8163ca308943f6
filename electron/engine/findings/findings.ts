import type { FindingLine } from '#contract/findings/lines.ts'
import type { FindingsOptions } from '#contract/findings/options.ts'
import { findingLines } from '#domain/findings/lines/findingLines.ts'
import { type ObservedBreak, observedBreaks } from '#domain/findings/observedBreak.ts'
import { readFindingsCsv } from '#exchange/csv/findingsCsv.ts'
import { readArchive } from '../core/readArchive.ts'

/** Findings about the rows of a table, and the rows that were left out. Rejects with a Trouble that names the file. */
export async function findingsOfTable(
  file: string,
  options: FindingsOptions,
): Promise<{ lines: Generator<FindingLine>; leftOut: { line: number; why: string }[] }> {
  const { observations, leftOut } = await readFindingsCsv(file)
  return { lines: findingLines(observations, options), leftOut }
}

/** Findings about the breaks of an archive, with groups as `nameOf` words them. Rejects with the Trouble of opening it. */
export async function findingsOfArchive(
  path: string,
  program: string,
  options: FindingsOptions,
  nameOf: (one: ObservedBreak) => string,
): Promise<Generator<FindingLine>> {
  const breaks = await readArchive(path, program, (archive) => archive.observations())
  return findingLines(observedBreaks(breaks, nameOf), options)
}
