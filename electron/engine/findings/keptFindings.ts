import { createHash } from 'node:crypto'
import type { ArchiveReader } from '#archive/archiveReader.ts'
import type { FindingChanges, FindingsSettings, KeptBlock, KeptFindingRow } from '#contract/findings/keptFinding.ts'
import { findingsFilter } from '#contract/findings/procedures.ts'
import type { UnreadableRecord } from '#contract/keeping/unreadable.ts'
import { blocksAsked, filterOf } from '#domain/findings/askedBlocks.ts'
import { blockChanges, keptBlocksOf } from '#domain/findings/blockChanges.ts'
import { canonicalJson } from '#domain/text/canonicalJson.ts'
import { askedResults } from './askedResults.ts'

type Reader = Pick<ArchiveReader, 'observations' | 'keptFindings' | 'keptFinding'>

/** The results that a question rests on, as they are now, and the hash of them. */
export function dataNow(
  archive: Pick<Reader, 'observations'>,
  settings: FindingsSettings,
): { blocks: KeptBlock[]; dataSha256: string } {
  const { blocks, groups } = askedResults(archive, findingsFilter.parse(filterOf(settings)))
  const kept = keptBlocksOf(blocksAsked(settings, blocks, groups))
  return { blocks: kept, dataSha256: createHash('sha256').update(canonicalJson(kept)).digest('hex') }
}

const noChanges: FindingChanges = { came: [], went: [], changed: [] }

/** What changed since a finding was kept; nothing where the hash is still the same. */
export function changesSince(
  archive: Pick<Reader, 'observations' | 'keptFinding'>,
  keptFindingId: number,
): FindingChanges {
  const { settings, dataSha256, blocks } = archive.keptFinding(keptFindingId).fields
  const now = dataNow(archive, settings)
  return now.dataSha256 === dataSha256 ? noChanges : blockChanges(blocks, now.blocks)
}

/** Every finding on the list, with how much of what it rests on changed since. */
export function keptRows(archive: Reader): { rows: KeptFindingRow[]; unreadable?: UnreadableRecord[] } {
  const { rows, unreadable } = archive.keptFindings()
  if (rows.length === 0) return { rows: [], ...(unreadable === undefined ? {} : { unreadable }) }
  const all = archive.observations()
  const once = { observations: () => all }
  return {
    rows: rows.map(({ fields: { listed: _, blocks, ...fields }, ...version }) => {
      const now = dataNow(once, fields.settings)
      const { came, went, changed } =
        now.dataSha256 === fields.dataSha256 ? noChanges : blockChanges(blocks, now.blocks)
      return {
        ...version,
        ...fields,
        ...{ blocks: blocks.length, came: came.length, went: went.length, changed: changed.length },
      }
    }),
    ...(unreadable === undefined ? {} : { unreadable }),
  }
}
