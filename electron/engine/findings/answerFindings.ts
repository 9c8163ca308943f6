import { createHash } from 'node:crypto'
import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { Findings, FindingsQuestion } from '#contract/findings/procedures.ts'
import { findingUnits } from '#domain/findings/lines/findingLines.ts'
import type { RememberedLines } from '#domain/findings/lines/rememberedLines.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import { askedResults } from './askedResults.ts'

/** Findings about the results of an archive, as they are now; hears how many parts are done. */
export function answerFindings(
  archive: Pick<ArchiveReader, 'observations'>,
  { options, filter }: FindingsQuestion,
  memory: RememberedLines,
  onProgress: (done: number, total: number) => void,
): Findings {
  const { observations, groups, blocks } = askedResults(archive.observations(), filter)
  return {
    groups,
    blocks,
    ...memory.linesOf(findingUnits(observations, options), onProgress),
    dataSha256: createHash('sha256').update(canonicalJson(blocks)).digest('hex'),
  }
}
